/** What a request gets that came to a foreign name or from a foreign page (RFC 9110 §15.5.20). */
function refuse(): Response {
  return new Response(
    "Noonbook answers only at its own address, and only its own pages. Open the address that it printed when it started.\n",
    { status: 421, headers: { "content-type": "text/plain; charset=utf-8" } },
  );
}

export const dynamic = "force-dynamic";
export { refuse as DELETE, refuse as GET, refuse as PATCH, refuse as POST, refuse as PUT };
