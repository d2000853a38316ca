import type { Day } from "#lib/calendar/index.ts";
import type { Fact } from "../facts/fact.ts";
import type { DraftChild } from "../records.ts";
import type { DraftKind } from "../template/kinds.ts";
import type { Chapter } from "../timing/chapters.ts";
import type { ScreenShare } from "../timing/screen-share.ts";
import type { Sentence } from "../text/sentences.ts";
import type { Span } from "./private-words.ts";

/** A sentence of the text as the user has it. */
export type OwnSentence = Sentence & {
  /** Written by hand: no draft of ours holds it. */
  readonly isOwn: boolean;
};

/** What a text is checked against. */
export type GuardGround = {
  readonly kind: DraftKind;
  readonly today: Day;
  readonly facts: readonly Fact[];
  /** Disclosures the lunches of the text call for. */
  readonly owed: readonly string[];
  readonly children: readonly DraftChild[];
  readonly privateWords: readonly string[];
  readonly surprise: string;
  readonly revealOn: Day | null;
  /** Surprises of further episodes that the text tells of, none of them revealed yet. */
  readonly hidden?: readonly { readonly surprise: string; readonly revealOn: Day | null }[];
  /** Foods of the week, scrapped ones too. */
  readonly foods: readonly string[];
  /** Foods that stayed out and were packed on no other day. */
  readonly scrapped: readonly string[];
  /** Times of the finished episode; null for a text that goes without them. */
  readonly times: {
    /** As marked by the user; empty: none are. */
    readonly chapters: readonly Chapter[];
    /** Null: nobody knows. */
    readonly totalSeconds: number | null;
    readonly shares: readonly ScreenShare[];
    /** Whether the user's note on local rules names a share at all. */
    readonly namesShare: boolean;
  } | null;
  readonly limits: {
    readonly titleMax: number;
    readonly descriptionMax: number;
    readonly firstLinesMax: number;
  };
};

/** Where a sentence stands in a text: its line and its place there, both from 0. */
export type Place = { readonly line: number; readonly at: number };

/** A change of the text that mends a finding. */
export type Fix =
  | {
      readonly kind: "replace";
      readonly label: string;
      readonly place: Place;
      readonly span: Span;
      readonly text: string;
    }
  | { readonly kind: "strike"; readonly label: string; readonly place: Place }
  | { readonly kind: "begin"; readonly label: string; readonly text: string }
  /** Other chapter lines in the place of those that stand there; an empty text takes them out. */
  | { readonly kind: "chapters"; readonly label: string; readonly text: string };

/** Something to mend before a text is copied. */
export type Finding = {
  /** The same as long as the same words stand there: what the user decides to keep is known by it. */
  readonly key: string;
  readonly text: string;
  readonly place: Place | null;
  readonly span: Span | null;
  readonly fixes: readonly Fix[];
};

/** One guard: what it looked for, and what it found. */
export type Check = {
  readonly kind: CheckKind;
  /** `stop`: a rule of ours is broken. `look`: the user may keep it. */
  readonly level: "stop" | "look";
  readonly title: string;
  /** What to say when nothing was found. */
  readonly passed: string;
  readonly findings: readonly Finding[];
};

export type CheckKind =
  | "names"
  | "places"
  | "surprise"
  | "disclosure"
  | "claims"
  | "records"
  | "scrapped"
  | "dates"
  | "lengths"
  | "links"
  | "chapters"
  | "screen";

type Placed = readonly { readonly sentence: OwnSentence; readonly place: Place }[];
const placings = new WeakMap<readonly (readonly OwnSentence[])[], Placed>();

/** The sentences of a text with where each stands; found once for all guards of it. */
export function placed(lines: readonly (readonly OwnSentence[])[]): Placed {
  const known = placings.get(lines);
  if (known) return known;
  const found = lines.flatMap((line, index) =>
    line.map((sentence, at) => ({ sentence, place: { line: index, at } })),
  );
  placings.set(lines, found);
  return found;
}

/** Every hit of a search in the sentences, as findings. */
export function findIn(
  lines: readonly (readonly OwnSentence[])[],
  kind: CheckKind,
  search: (sentence: OwnSentence) => readonly Span[],
  found: (
    words: string,
    place: Place,
    span: Span,
  ) => { readonly text: string; readonly fixes: readonly Fix[] },
): Finding[] {
  return placed(lines).flatMap(({ sentence, place }) =>
    search(sentence).map((span) => {
      const words = sentence.text.slice(...span);
      const key = `${kind}: ${sentence.text}`;
      return { key, place, span, ...found(words, place, span) };
    }),
  );
}

/** Takes the sentence out. */
export function strike(place: Place): Fix {
  return { kind: "strike", label: "Strike the sentence", place };
}
