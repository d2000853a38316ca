"use client";

/** What is shown when a page broke: nothing typed elsewhere is lost by it. */
export default function PageError({
  reset,
}: {
  readonly error: Error;
  readonly reset: () => void;
}) {
  return (
    <section className="sheet" role="alert">
      <h1>This page could not be made</h1>
      <p>
        Your records are as they were. Try again; if it stays, the terminal that runs Noonbook says
        why.
      </p>
      <p>
        <button className="btn" onClick={reset} type="button">
          Try again
        </button>
      </p>
    </section>
  );
}
