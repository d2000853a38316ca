import type { SourceId } from "./source.ts";

/** What a finding is about, most serious first. */
export const FINDING_KINDS = [
  "recall",
  "allergen",
  "choking",
  "school",
  "temperature",
  "avoidance",
  "cross-contact",
  "balance",
] as const;
export type FindingKind = (typeof FINDING_KINDS)[number];

/** What a finding is about, in a word or two for a tag. */
export function findingWord(kind: FindingKind): string {
  switch (kind) {
    case "recall":
      return "recalled";
    case "allergen":
      return "allergen";
    case "choking":
      return "choking";
    case "school":
      return "school rule";
    case "temperature":
      return "temperature";
    case "avoidance":
      return "avoided";
    case "cross-contact":
      return "keep apart";
    case "balance":
      return "balance";
  }
}

/** A broken rule, something to look at before the lid shuts, or a quiet note. */
export const FINDING_LEVELS = ["stop", "look", "note"] as const;
export type FindingLevel = (typeof FINDING_LEVELS)[number];

/** One thing a check has to say about a lunch. */
export type Finding = {
  /** The same for the same finding of a lunch; changes when a food joins it, so that a note lapses. */
  readonly key: string;
  readonly kind: FindingKind;
  readonly level: FindingLevel;
  /** One sentence. */
  readonly sentence: string;
  /** What would settle it, in a sentence; empty when nothing is to do. */
  readonly remedy: string;
  readonly sources: readonly SourceId[];
  /** The items of the lunch it speaks of. */
  readonly itemIds: readonly string[];
  /** False where no note may keep it: the food or the record must change. */
  readonly mayKeep: boolean;
};

/** A finding with the user's decision to keep it, if there is one and it may be kept. */
export type JudgedFinding = Finding & { readonly keptBecause: string | null };

/**
 * Findings in order of seriousness: level, then kind, then words. What the user keeps stands last, with
 * the note; a note on what may not be kept is disregarded.
 */
export function judgeFindings(
  findings: readonly Finding[],
  notes: ReadonlyMap<string, string>,
): JudgedFinding[] {
  return findings
    .map((finding) => ({
      ...finding,
      keptBecause: finding.mayKeep ? (notes.get(finding.key) ?? null) : null,
    }))
    .sort(
      (one, other) =>
        Number(one.keptBecause !== null) - Number(other.keptBecause !== null) ||
        rankOf(one) - rankOf(other) ||
        (one.sentence < other.sentence ? -1 : 1),
    );
}

function rankOf({ level, kind }: Finding): number {
  return FINDING_LEVELS.indexOf(level) * FINDING_KINDS.length + FINDING_KINDS.indexOf(kind);
}

/** A key from what it is about and the foods it speaks of, in any order. */
export function findingKey(about: string, foodIds: readonly string[]): string {
  return `${about}:${[...new Set(foodIds)].sort().join("+")}`;
}
