import type { Day } from "#lib/calendar/index.ts";
import type { DraftRecord } from "#lib/db/index.ts";
import {
  beatsOf,
  checksOf,
  countWords,
  mergeDraft,
  openFindings,
  ownLines,
  runningTime,
  stalenessOf,
  type Beat,
  type Check,
  type compose,
  type Composed,
  type Conflict,
  type DraftKind,
  type Fact,
  type GuardGround,
  type OwnSentence,
  type Staleness,
  type TemplateProblem,
} from "#lib/drafts/index.ts";
import { recordViews, type RecordView } from "./record-view.ts";

/** A beat of the outline with its place on the clock, from the start and to the end. */
export type BeatView = Pick<Beat, "title" | "picture" | "sound" | "holdSeconds"> & {
  readonly from: string;
  readonly left: string;
};

/** What a kept draft can be brought up to date with: sentences that go and come, and passages to choose. */
export type MergeView = Pick<Staleness, "outdated" | "fresh"> & {
  readonly conflicts: readonly Conflict[];
};

/** The same of a draft whose records changed, with what changed in them. */
export type StaleView = MergeView & Pick<Staleness, "changes">;

/** One piece to publish, as it stands. */
export type PieceView<Kind extends DraftKind | "board" = DraftKind> = {
  readonly kind: Kind;
  readonly name: string;
  readonly lunchId: string | null;
  readonly date: Day | null;
  readonly body: string;
  readonly lines: readonly (readonly OwnSentence[])[];
  readonly records: readonly RecordView[];
  readonly checks: readonly Check[];
  readonly kept: readonly string[];
  /** Findings that hold the copy back. */
  readonly open: number;
  readonly isEdited: boolean;
  readonly words: number;
  readonly sentences: number;
  /** Beats with their estimated times; only an outline has them. */
  readonly beats: readonly BeatView[];
  /** The estimated running time of an outline: "6:40". */
  readonly running: string;
  readonly revision: number;
  /** What changed in the records since it was written; null while nothing did. */
  readonly stale: StaleView | null;
  /** What a later version of the template would write; null while it was written with the latest. */
  readonly newerTemplate: MergeView | null;
  /** Why the template could not be filled in, when it could not. */
  readonly templateProblem: TemplateProblem | null;
};

type Parts<Kind extends DraftKind | "board"> = Pick<
  PieceView<Kind>,
  "kind" | "name" | "lunchId" | "date" | "newerTemplate"
> & {
  readonly stored: DraftRecord | undefined;
  readonly composed: ReturnType<typeof compose>;
  readonly guard: GuardGround;
  /** Where its records are looked up. */
  readonly source: { readonly facts: readonly Fact[]; readonly monday: Day };
  readonly wordsPerMinute: number;
};

/** A piece as it stands: the user's own text where one is kept, else as the records tell it. */
export function pieceOf<Kind extends DraftKind | "board">({
  ...parts
}: Parts<Kind>): PieceView<Kind> {
  const { kind, name, lunchId, date, newerTemplate, stored, composed } = parts;
  const fresh = composed.ok ? composed.value : undefined;
  const body = stored?.body ?? fresh?.text ?? "";
  const lines =
    fresh && body === fresh.text
      ? fresh.lines.map((line) => line.map((sentence) => ({ ...sentence, isOwn: false })))
      : ownLines(body, [...(stored?.written.lines ?? []), ...(fresh?.lines ?? [])]);
  const checks = checksOf(lines, parts.guard);
  const kept = stored?.written.kept ?? [];
  const stale = stored && fresh ? staleView(stored, fresh) : null;
  const beats = kind === "outline" ? beatsOf(lines, parts.wordsPerMinute) : [];
  return {
    ...{ kind, name, lunchId, date, newerTemplate, body, lines, checks, kept, stale },
    records: recordViews(lines, parts.source, stored),
    open: openFindings(checks, new Set(kept)) + (stale ? 1 : 0),
    isEdited: stored?.edited ?? false,
    words: lines.flat().reduce((sum, { text }) => sum + countWords(text), 0),
    sentences: lines.flat().length,
    beats: beats.map(({ from, left, ...beat }) => ({
      ...{ title: beat.title, picture: beat.picture, sound: beat.sound },
      ...{ holdSeconds: beat.holdSeconds, from: runningTime(from), left: runningTime(left) },
    })),
    running: runningTime(beats.reduce((sum, beat) => sum + beat.seconds, 0)),
    revision: stored?.revision ?? 0,
    templateProblem: composed.ok ? null : composed.problem,
  };
}

function staleView(stored: DraftRecord, fresh: Composed): StaleView | null {
  const { isStale, outdated, fresh: now, changes } = stalenessOf(stored.written, fresh);
  if (!isStale) return null;
  const { conflicts } = mergeDraft(stored.body, stored.written.lines, fresh.lines);
  return { outdated, fresh: now, changes, conflicts };
}

/** What is kept of a piece as it was written, beside the choices that stay with it. */
export function writtenOf(
  composed: Composed,
  stays: Partial<Pick<DraftRecord["written"], "salt" | "kept" | "published" | "board">>,
): DraftRecord["written"] {
  return {
    lines: composed.lines.map((line) =>
      line.map(({ text, facts }) => ({ text, facts: [...facts] })),
    ),
    facts: composed.facts.map(({ id, label, rows }) => ({
      ...{ id, label },
      rows: rows.map(([name, value]) => [name, value]),
    })),
    ...{ salt: stays.salt ?? 0, kept: stays.kept ?? [] },
    ...{ published: stays.published ?? null, board: stays.board ?? null },
  };
}
