import type { Day } from "#lib/calendar/index.ts";
import type { DraftRecord } from "#lib/db/index.ts";
import {
  beatsOf,
  checksOf,
  compose,
  countWords,
  DEFAULT_TEMPLATES,
  DRAFT_NAMES,
  mergeDraft,
  openFindings,
  ownLines,
  RESTS_ON,
  runningTime,
  stalenessOf,
  type Beat,
  type Check,
  type Composed,
  type Conflict,
  type DraftKind,
  type Fact,
  type FactThen,
  type GuardGround,
  type OwnSentence,
  type Staleness,
  type TemplateProblem,
} from "#lib/drafts/index.ts";
import type { CopyDeskGround } from "./copy-desk-ground.ts";
import { guardedTimes } from "./episode-times.ts";

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

/** What a stale draft is to be brought up to date with. */
export type StaleView = Pick<Staleness, "outdated" | "fresh" | "changes"> & {
  readonly conflicts: readonly Conflict[];
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
  /** What changed in the records since it was written; null while nothing did. */
  readonly stale: StaleView | null;
  /** The template has a later version than the one it was written with. */
  readonly newerTemplate: boolean;
  /** Why the template could not be filled in, when it could not. */
  readonly templateProblem: TemplateProblem | null;
};

const pieceViews = new WeakMap<CopyDeskGround, Map<string, PieceView>>();

/**
 * A piece of an episode: the user's own text where one is kept, else as the records tell it. Made once
 * for a ground, which may be kept while pages are turned.
 */
export function pieceView(
  ground: CopyDeskGround,
  kind: DraftKind,
  lunchId: string | null,
): PieceView {
  const views = pieceViews.get(ground) ?? new Map<string, PieceView>();
  pieceViews.set(ground, views);
  const key = `${kind} ${lunchId ?? ""}`;
  const view = views.get(key) ?? makePieceView(ground, kind, lunchId);
  views.set(key, view);
  return view;
}

function makePieceView(ground: CopyDeskGround, kind: DraftKind, lunchId: string | null): PieceView {
  const stored = storedPiece(ground, kind, lunchId);
  const composed = composePiece(ground, kind, lunchId, stored);
  const fresh = composed.ok ? composed.value : undefined;
  const body = stored?.body ?? fresh?.text ?? "";
  const lines =
    fresh && body === fresh.text
      ? fresh.lines.map((line) => line.map((sentence) => ({ ...sentence, isOwn: false })))
      : ownLines(body, [...(stored?.written.lines ?? []), ...(fresh?.lines ?? [])]);
  const checks = checksOf(lines, guardGround(ground, kind, lunchId));
  const kept = stored?.written.kept ?? [];
  const stale = stored && fresh ? staleView(stored, fresh) : null;
  const beats = kind === "outline" ? beatsOf(lines, ground.settings.wordsPerMinute) : [];
  return {
    ...{ kind, name: DRAFT_NAMES[kind], lunchId, body, lines, checks, kept },
    date: ground.records.lunches.find(({ id }) => id === lunchId)?.date ?? null,
    records: recordsOf(lines, ground, stored),
    stale,
    newerTemplate: stored !== undefined && templateVersion(ground, kind) > stored.templateVersion,
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
  { told, templates, salt }: CopyDeskGround,
  kind: DraftKind,
  lunchId: string | null,
  stored?: Pick<DraftRecord, "templateVersion" | "written">,
): ReturnType<typeof compose> {
  const versions = templates.filter((template) => template.kind === kind);
  const template = stored
    ? versions.find(({ version }) => version === stored.templateVersion)
    : versions.at(-1);
  const body = template?.body ?? DEFAULT_TEMPLATES[kind];
  return compose(told(stored?.written.salt ?? salt), kind, body, lunchId);
}

/** The version of the template that a piece is written with now; 0 is ours. */
export function templateVersion({ templates }: CopyDeskGround, kind: DraftKind): number {
  return templates.filter((template) => template.kind === kind).at(-1)?.version ?? 0;
}

/** The beats of the outline as it stands, with the times estimated at the user's speaking rate. */
export function outlineBeats(ground: CopyDeskGround): readonly Beat[] {
  const stored = storedPiece(ground, "outline", null);
  const composed = composePiece(ground, "outline", null, stored);
  const body = stored?.body ?? (composed.ok ? composed.value.text : "");
  return beatsOf(ownLines(body, []), ground.settings.wordsPerMinute);
}

/** What in some public words breaks a rule whatever piece they stand in: names, places, the surprise, a promise. */
export function stoppedIn(ground: CopyDeskGround, words: readonly string[]): string[] {
  const lines = words.map((text) => ownLines(text, []).flat());
  return checksOf(lines, { ...guardGround(ground, "titles", null), owed: [] })
    .filter(({ level }) => level === "stop")
    .flatMap(({ findings }) => findings.map(({ text }) => text));
}

type CommonGround = Omit<GuardGround, "kind" | "owed" | "times">;
const commonGrounds = new WeakMap<CopyDeskGround, CommonGround>();

/** What a text of a piece is checked against. */
function guardGround(ground: CopyDeskGround, kind: DraftKind, lunchId: string | null): GuardGround {
  const common = commonGrounds.get(ground) ?? commonGround(ground);
  commonGrounds.set(ground, common);
  const shown = new Set(
    ground.records.lunches
      .filter((lunch) => lunchId === null || lunch.id === lunchId)
      .flatMap((lunch) => lunch.items.map((item) => item.id)),
  );
  // The teaser tells of no lunch, so nothing in it was given or paid.
  const owed = common.facts.flatMap(({ detail, refs }) =>
    kind !== "teaser" && detail.kind === "disclosure" && refs.some(({ id }) => shown.has(id))
      ? [detail.text]
      : [],
  );
  // The description is what an episode’s chapters are published with.
  const times =
    kind === "description"
      ? guardedTimes(ground.times, {
          ...{ records: ground.records, lawNote: ground.settings.lawNote },
          estimate: () => outlineBeats(ground).reduce((sum, beat) => sum + beat.seconds, 0),
        })
      : null;
  return { ...common, kind, owed, times };
}

/** What holds for every piece of an episode. */
function commonGround({ records, settings, told }: CopyDeskGround): CommonGround {
  const items = records.lunches.flatMap((lunch) => lunch.items);
  const packed = new Set(items.filter((item) => item.fate !== "scrapped").map((one) => one.food));
  const scrapped = items.filter((item) => item.fate === "scrapped" && !packed.has(item.food));
  return {
    ...{ today: records.today, facts: told(0).facts, children: records.children },
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
  stored: DraftRecord | undefined,
): RecordView[] {
  const used = [...new Set(lines.flat().flatMap((sentence) => sentence.facts))];
  const { facts } = told(0);
  return used.flatMap((id) => {
    const fact = facts.find((one) => one.id === id);
    const then = stored?.written.facts.find((one) => one.id === id);
    if (!fact) return then ? [goneRecord(then, episode.weekOf)] : [];
    const rests = RESTS_ON[fact.kind];
    const { label, rows, on } = fact;
    return [{ id, label, rests, rows, on, href: hrefOf(fact, episode.weekOf) }];
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

function staleView(stored: DraftRecord, fresh: Composed): StaleView | null {
  const { isStale, outdated, fresh: now, changes } = stalenessOf(stored.written, fresh);
  if (!isStale) return null;
  const { conflicts } = mergeDraft(stored.body, stored.written.lines, fresh.lines);
  return { outdated, fresh: now, changes, conflicts };
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
