import type { Composed } from "../compose.ts";
import { textOfLines, type Line } from "../text/sentences.ts";

/** A fact as it stood when a draft was written. */
export type FactThen = {
  readonly id: string;
  readonly label: string;
  readonly rows: readonly (readonly [string, string])[];
};

/** A draft as it was written from the records of its day. */
export type WrittenDraft = { readonly lines: readonly Line[]; readonly facts: readonly FactThen[] };

/** What a changed record says now, and said then; null where there was or is nothing. */
export type FactChange = {
  readonly id: string;
  readonly label: string;
  readonly was: FactThen["rows"] | null;
  readonly now: FactThen["rows"] | null;
};

export type Staleness = {
  /** What would be written today is not what was written. */
  readonly isStale: boolean;
  /** Sentences that no longer follow from the records. */
  readonly outdated: readonly string[];
  /** Sentences that follow from them now. */
  readonly fresh: readonly string[];
  readonly changes: readonly FactChange[];
};

/**
 * Whether a draft is stale: it is as soon as the same template and opener would write another text
 * from today's records, and only then.
 */
export function stalenessOf(written: WrittenDraft, now: Composed): Staleness {
  const then = written.lines.flat();
  const today = now.lines.flat();
  const had = new Set(then.map(({ text }) => text));
  const has = new Set(today.map(({ text }) => text));
  const outdated = then.filter(({ text }) => !has.has(text));
  const fresh = today.filter(({ text }) => !had.has(text));
  const touched = new Set([...outdated, ...fresh].flatMap(({ facts }) => facts));
  return {
    isStale: textOfLines(written.lines) !== now.text,
    outdated: outdated.map(({ text }) => text),
    fresh: fresh.map(({ text }) => text),
    changes: [...touched].flatMap((id) => {
      const before = written.facts.find((fact) => fact.id === id);
      const after = now.facts.find((fact) => fact.id === id);
      const isSame = JSON.stringify(before?.rows) === JSON.stringify(after?.rows);
      const label = after?.label ?? before?.label;
      if (isSame || label === undefined) return [];
      return [{ id, label, was: before?.rows ?? null, now: after?.rows ?? null }];
    }),
  };
}
