import type { DraftRecord } from "#lib/db/index.ts";
import {
  beatsOf,
  checksOf,
  compose,
  DEFAULT_TEMPLATES,
  DRAFT_NAMES,
  mergeDraft,
  ownLines,
  stalenessOf,
  type Beat,
  type DraftKind,
  type GuardGround,
} from "#lib/drafts/index.ts";
import type { CopyDeskGround } from "./copy-desk-ground.ts";
import { guardedTimes } from "./episode-times.ts";
import { pieceOf, type MergeView, type PieceView } from "./piece-of.ts";

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
  return pieceOf({
    ...{ kind, name: DRAFT_NAMES[kind], lunchId, stored },
    composed: composePiece(ground, kind, lunchId, stored),
    date: ground.records.lunches.find(({ id }) => id === lunchId)?.date ?? null,
    guard: guardGround(ground, kind, lunchId),
    source: { facts: ground.told(0).facts, monday: ground.episode.weekOf },
    wordsPerMinute: ground.settings.wordsPerMinute,
    newerTemplate: newerTemplateView(ground, kind, lunchId, stored),
  });
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
  return compose(told(stored?.written.salt ?? salt), body, lunchId);
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

/** What would come of writing a kept draft anew with the template as it is now. */
function newerTemplateView(
  ground: CopyDeskGround,
  kind: DraftKind,
  lunchId: string | null,
  stored: DraftRecord | undefined,
): MergeView | null {
  const version = templateVersion(ground, kind);
  if (!stored || version <= stored.templateVersion) return null;
  const anew = composePiece(ground, kind, lunchId, { ...stored, templateVersion: version });
  if (!anew.ok) return null;
  const { outdated, fresh } = stalenessOf(stored.written, anew.value);
  const { conflicts } = mergeDraft(stored.body, stored.written.lines, anew.value.lines);
  return { outdated, fresh, conflicts };
}
