import Link from "next/link";

/** An address that leads to no record. */
export default function NotFound() {
  return (
    <section className="sheet">
      <h1>Nothing is kept here</h1>
      <p>The address may be old, or the week was removed.</p>
      <p>
        <Link className="btn plain" href="/slate">
          Open the slate
        </Link>
      </p>
    </section>
  );
}
