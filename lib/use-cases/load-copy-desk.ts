import type { Day } from "#lib/calendar/index.ts";
import {
  correctionNote,
  DRAFT_KINDS,
  type DraftKind,
  type EpisodeRecords,
} from "#lib/drafts/index.ts";
import { readNeighbours } from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import { keptCopyDeskGround, type CopyDeskGround } from "./copy-desk-ground.ts";
import { stageOf, type Stage } from "./episode-stage.ts";
import { inTheTray, viewItem, type ItemView } from "./lunch-view.ts";
import type { PieceView } from "./piece-of.ts";
import { pieceView, stoppedIn } from "./piece-view.ts";
import { changesSincePublished } from "./published-pieces.ts";

export type CopyDeskView = {
  readonly monday: Day;
  readonly number: number;
  readonly title: string;
  readonly stage: Stage;
  readonly before: Day | undefined;
  readonly after: Day | undefined;
  /** Lunches that a post can be written for. */
  readonly days: readonly { readonly lunchId: string; readonly date: Day }[];
  /** Days that passed with the lid open: nobody knows what was eaten, so nothing is told. */
  readonly untold: readonly Day[];
};

export type CopyDeskPack = CopyDeskView & {
  readonly pieces: readonly PieceView[];
  readonly revision: number;
  readonly publishedOn: Day | null;
  readonly url: string;
  /** What the records say otherwise since the episode was published; empty: nothing. */
  readonly correction: string;
  /** What breaks a rule in that note; empty: it may be copied. */
  readonly correctionStops: readonly string[];
  readonly promises: EpisodeRecords["promises"];
  /** The trays of the week: its contact sheet. */
  readonly trays: readonly {
    readonly date: Day;
    readonly angle: string;
    readonly items: readonly ItemView[];
  }[];
};

/** Every piece of an episode, or undefined when the week has none. */
export async function loadPack(
  { db, today }: Context,
  monday: Day,
): Promise<CopyDeskPack | undefined> {
  const [ground, near] = await Promise.all([
    keptCopyDeskGround(db, monday, today),
    readNeighbours(db, monday),
  ]);
  return ground && packOf(ground, near);
}

/** Every piece of an episode as read, between the weeks beside it. */
export function packOf(
  ground: CopyDeskGround,
  near: Pick<CopyDeskView, "before" | "after">,
): CopyDeskPack {
  const view = { ...deskView(ground), ...near };
  const pieces = DRAFT_KINDS.flatMap((kind) =>
    kind === "lunch-post"
      ? view.days.map(({ lunchId }) => pieceView(ground, kind, lunchId))
      : [pieceView(ground, kind, null)],
  );
  const correction =
    ground.episode.publishedOn === null ? "" : correctionNote(changesSincePublished(ground));
  const { episode, records } = ground;
  return {
    ...{ ...view, pieces, revision: episode.revision, promises: records.promises },
    trays: episode.lunches.map(({ date, angle, items }) => ({
      ...{ date, angle, items: inTheTray(items.map(viewItem)) },
    })),
    publishedOn: episode.publishedOn,
    url: episode.url,
    correction,
    correctionStops: stoppedIn(ground, correction.split("\n")),
  };
}

/** One piece of an episode; a lunch post without a day is that of the first. */
export async function loadPiece(
  { db, today }: Context,
  monday: Day,
  kind: DraftKind,
  date: Day | undefined,
): Promise<(CopyDeskView & { readonly piece: PieceView }) | undefined> {
  const [ground, near] = await Promise.all([
    keptCopyDeskGround(db, monday, today),
    readNeighbours(db, monday),
  ]);
  if (!ground) return undefined;
  const view = { ...deskView(ground), ...near };
  const day = view.days.find((one) => one.date === date) ?? view.days[0];
  const lunchId = kind === "lunch-post" ? (day?.lunchId ?? null) : null;
  return { ...view, piece: pieceView(ground, kind, lunchId) };
}

/** The Monday of the episode that is worked on now: the latest that has begun, else the next one. */
export async function currentEpisode({ db, today }: Context): Promise<Day | undefined> {
  const begun = await db.episode.findFirst({
    where: { weekOf: { lte: today } },
    orderBy: { weekOf: "desc" },
    select: { weekOf: true },
  });
  const next =
    begun ?? (await db.episode.findFirst({ orderBy: { weekOf: "asc" }, select: { weekOf: true } }));
  return next ? (next.weekOf as Day) : undefined;
}

/** What the head of every copy-desk page shows. */
export function deskView({ episode, records, told }: CopyDeskGround) {
  const packed = told(0).facts.filter((fact) => fact.kind === "packed");
  const isTold = (lunchId: string): boolean =>
    packed.some((fact) => fact.id === `packed:${lunchId}`);
  return {
    monday: episode.weekOf,
    number: episode.number,
    title: episode.theme?.name ?? (episode.workingTitle || "Untitled week"),
    stage: stageOf(episode),
    days: records.lunches
      .filter(({ id }) => isTold(id))
      .map(({ id, date }) => ({ lunchId: id, date })),
    untold: records.lunches
      .filter((lunch) => !lunch.isPacked && lunch.date < records.today && lunch.items.length > 0)
      .map(({ date }) => date),
  };
}
