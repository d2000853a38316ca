import type { Fact } from "./facts.ts";

/** A sentence of a draft; `facts` maps fact ids to the hash they had when it was written. Empty: handwritten. */
export interface Sentence {
  readonly text: string;
  readonly refs: readonly string[];
  readonly facts: Readonly<Record<string, string>>;
}

/** A text to publish, sentence by sentence. */
export interface Draft {
  readonly kind: DraftKind;
  readonly sentences: readonly Sentence[];
}

export type DraftKind = "description" | "spoken outline" | "week recap" | "lunch post";

const TOLD: Readonly<Record<DraftKind, readonly Fact["kind"][]>> = {
  description: ["disclosure", "theme", "lunch"],
  "spoken outline": ["disclosure", "theme", "lunch", "first", "return"],
  "week recap": ["disclosure", "theme", "lunch", "first", "return", "finish", "quote"],
  "lunch post": ["disclosure", "lunch", "finish", "quote"],
};

/** A draft of the kinds of fact it tells, disclosures at the start (16 CFR 255.5). */
export function draftOf(kind: DraftKind, facts: readonly Fact[]): Draft {
  const told = facts.filter((one) => TOLD[kind].includes(one.kind));
  return { kind, sentences: told.map(sentenceOf) };
}

/** What a changed record would change: sentences no longer true, and facts not told yet. Both empty: fresh. */
export function staleOf(
  draft: Draft,
  facts: readonly Fact[],
): { readonly outdated: readonly Sentence[]; readonly missing: readonly Fact[] } {
  const now = new Map(facts.map((one) => [one.id, one.hash]));
  const told = new Set(draft.sentences.flatMap((one) => Object.keys(one.facts)));
  return {
    outdated: draft.sentences.filter((one) =>
      Object.entries(one.facts).some(([id, hash]) => now.get(id) !== hash),
    ),
    missing: facts.filter((one) => TOLD[draft.kind].includes(one.kind) && !told.has(one.id)),
  };
}

/** The draft as one plain text. */
export function textOf(draft: Draft): string {
  return draft.sentences.map((one) => one.text).join(" ");
}

function sentenceOf(one: Fact): Sentence {
  return { text: one.text, refs: one.refs, facts: { [one.id]: one.hash } };
}
