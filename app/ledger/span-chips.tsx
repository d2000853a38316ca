import Link from "next/link";
import type { LedgerSpan } from "#lib/use-cases/load-ledger.input.ts";

const SPANS = [
  ["quarter", "13 weeks"],
  ["year", "A year"],
  ["all", "All there is"],
] as const;

/** How far back a page of the ledger looks. */
export function SpanChips({ room, span }: { readonly room: string; readonly span: LedgerSpan }) {
  return (
    <nav aria-label="How far back" className="row">
      {SPANS.map(([id, words]) => (
        <Link
          className="chip"
          key={id}
          href={`${room}?span=${id}`}
          aria-current={id === span ? "page" : undefined}
          prefetch={false}
        >
          {words}
        </Link>
      ))}
    </nav>
  );
}
