import type { Day } from "#lib/calendar/index.ts";
import type { DraftRecord } from "#lib/db/index.ts";
import { RESTS_ON, type Fact, type FactThen, type OwnSentence } from "#lib/drafts/index.ts";

/** A record behind a sentence, as the page shows it. */
export type RecordView = {
  readonly id: string;
  readonly label: string;
  readonly rests: "packed" | "verdict" | "goods" | "prep";
  readonly rows: readonly (readonly [string, string])[];
  readonly on: Day | null;
  /** The page where it can be seen and changed. */
  readonly href: string;
};

/** The records behind the sentences of a text, in the order they are first told. */
export function recordViews(
  lines: readonly (readonly OwnSentence[])[],
  { facts, monday }: { readonly facts: readonly Fact[]; readonly monday: Day },
  stored: DraftRecord | undefined,
): RecordView[] {
  const used = [...new Set(lines.flat().flatMap((sentence) => sentence.facts))];
  return used.flatMap((id) => {
    const fact = facts.find((one) => one.id === id);
    const then = stored?.written.facts.find((one) => one.id === id);
    if (!fact) return then ? [goneRecord(then, monday)] : [];
    const rests = RESTS_ON[fact.kind];
    const { label, rows, on } = fact;
    return [{ id, label, rests, rows, on, href: hrefOf(fact, monday) }];
  });
}

/** A record that is no longer there, as it was when the draft was written. */
function goneRecord(then: FactThen, monday: Day): RecordView {
  const { id, label, rows } = then;
  return {
    id,
    label: `${label} (gone since)`,
    rests: "packed",
    rows,
    on: null,
    href: `/slate/week/${monday}`,
  };
}

function hrefOf({ kind, on }: Fact, monday: Day): string {
  if (on === null) return `/slate/week/${monday}`;
  return kind === "verdict" || kind === "quote" ? `/verdicts/${on}` : `/callsheet/${on}`;
}
