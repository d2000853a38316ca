import type { Day } from "#lib/calendar/index.ts";
import type { DraftRecord } from "#lib/db/index.ts";
import {
  beatsOf,
  checksOf,
  compose,
  countWords,
  DEFAULT_TEMPLATES,
  DRAFT_NAMES,
  openFindings,
  ownLines,
  RESTS_ON,
  runningTime,
  type Beat,
  type Check,
  type Composed,
  type DraftKind,
  type Fact,
  type GuardGround,
  type OwnSentence,
  type TemplateProblem,
} from "#lib/drafts/index.ts";
import type { CopyDeskGround } from "./copy-desk-ground.ts";

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

/** A beat of the outline with its place on the clock, from the start and to the end. */
export type BeatView = Pick<Beat, "title" | "picture" | "sound" | "holdSeconds"> & {
  readonly from: string;
  readonly left: string;
};

/** One piece to publish, as it stands. */
export type PieceView = {
  readonly kind: DraftKind;
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
  /** Why the template could not be filled in, when it could not. */
  readonly templateProblem: TemplateProblem | null;
};

/** A piece of an episode: the user's own text where one is kept, else as the records tell it. */
export function pieceView(
  ground: CopyDeskGround,
  kind: DraftKind,
  lunchId: string | null,
): PieceView {
  const stored = storedPiece(ground, kind, lunchId);
  const composed = composePiece(ground, kind, lunchId, stored);
  const fresh = composed.ok ? composed.value : undefined;
  const body = stored?.body ?? fresh?.text ?? "";
  const lines = ownLines(body, [...(stored?.written.lines ?? []), ...(fresh?.lines ?? [])]);
  const checks = checksOf(lines, guardGround(ground, kind, lunchId));
  const kept = stored?.written.kept ?? [];
  const beats = kind === "outline" ? beatsOf(lines, ground.settings.wordsPerMinute) : [];
  return {
    ...{ kind, name: DRAFT_NAMES[kind], lunchId, body, lines, checks, kept },
    date: ground.records.lunches.find(({ id }) => id === lunchId)?.date ?? null,
    records: recordsOf(lines, ground),
    open: openFindings(checks, new Set(kept)),
    isEdited: stored?.edited ?? false,
    words: countWords(body),
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

/** The draft kept for a piece, if one is. */
export function storedPiece(
  { drafts }: CopyDeskGround,
  kind: DraftKind,
  lunchId: string | null,
): DraftRecord | undefined {
  return drafts.find((draft) => draft.kind === kind && draft.lunchId === lunchId);
}

/** A piece written anew from the records as they stand, with the template and opener it was kept with. */
export function composePiece(
  { told, templates }: CopyDeskGround,
  kind: DraftKind,
  lunchId: string | null,
  stored?: DraftRecord,
): ReturnType<typeof compose> {
  const versions = templates.filter((template) => template.kind === kind);
  const template = stored
    ? versions.find(({ version }) => version === stored.templateVersion)
    : versions.at(-1);
  const body = template?.body ?? DEFAULT_TEMPLATES[kind];
  return compose(told(stored?.written.salt ?? 0), kind, body, lunchId);
}

/** The version of the template that a piece is written with now; 0 is ours. */
export function templateVersion({ templates }: CopyDeskGround, kind: DraftKind): number {
  return templates.filter((template) => template.kind === kind).at(-1)?.version ?? 0;
}

/** What a text of a piece is checked against. */
function guardGround(
  { records, settings, told }: CopyDeskGround,
  kind: DraftKind,
  lunchId: string | null,
): GuardGround {
  const { facts } = told(0);
  const items = records.lunches.flatMap((lunch) => lunch.items);
  const packed = new Set(items.filter((item) => item.fate !== "scrapped").map((one) => one.food));
  const scrapped = items.filter((item) => item.fate === "scrapped" && !packed.has(item.food));
  const shown = new Set(
    records.lunches
      .filter((lunch) => lunchId === null || lunch.id === lunchId)
      .flatMap((lunch) => lunch.items.map((item) => item.id)),
  );
  const owed = facts.filter(
    (fact) => fact.kind === "disclosure" && fact.refs.some(({ id }) => shown.has(id)),
  );
  return {
    ...{ kind, today: records.today, facts, children: records.children },
    owed: owed.flatMap(({ detail }) => (detail.kind === "disclosure" ? [detail.text] : [])),
    privateWords: settings.privateWords,
    ...{ surprise: records.surprise, revealOn: records.revealOn },
    foods: [...new Set(items.map((item) => item.food))],
    scrapped: [...new Set(scrapped.map((item) => item.food))],
    limits: {
      titleMax: settings.titleMax,
      descriptionMax: settings.descriptionMax,
      firstLinesMax: settings.firstLinesMax,
    },
  };
}

function recordsOf(
  lines: readonly (readonly OwnSentence[])[],
  { told, episode }: CopyDeskGround,
): RecordView[] {
  const used = [...new Set(lines.flat().flatMap((sentence) => sentence.facts))];
  const { facts } = told(0);
  return used.flatMap((id) => {
    const fact = facts.find((one) => one.id === id);
    if (!fact) return [];
    const rests = RESTS_ON[fact.kind];
    const { label, rows, on } = fact;
    return [{ id, label, rests, rows, on, href: hrefOf(fact, episode.weekOf) }];
  });
}

function hrefOf({ kind, on }: Fact, monday: Day): string {
  if (on === null) return `/slate/week/${monday}`;
  return kind === "verdict" || kind === "quote" ? `/verdicts/${on}` : `/callsheet/${on}`;
}

/** What is kept of a piece as it was written. */
export function writtenOf(
  composed: Composed,
  salt: number,
  kept: readonly string[],
): DraftRecord["written"] {
  return {
    lines: composed.lines.map((line) =>
      line.map(({ text, facts }) => ({ text, facts: [...facts] })),
    ),
    facts: composed.facts.map(({ id, label, rows }) => ({
      ...{ id, label },
      rows: rows.map(([name, value]) => [name, value]),
    })),
    ...{ salt, kept: [...kept] },
  };
}
