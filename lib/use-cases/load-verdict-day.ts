import { z } from "zod";
import { groupBy } from "#lib/base/index.ts";
import { mondayOf, type Day } from "#lib/calendar/index.ts";
import type { Colour, Pattern } from "#lib/catalog/index.ts";
import { parseColumn, readEpisode, type Db } from "#lib/db/index.ts";
import { ageInMonths, facePointsFor, type FacePoints } from "#lib/reactions/index.ts";
import type { Context } from "./context.ts";
import { readDayFacts, type FactsState } from "./keep-day-facts.ts";
import { viewItem } from "./lunch-view.ts";
import type { VerdictState } from "./log-reaction.ts";
import { readVerdictCells } from "./verdict-cells.ts";

/** An item that came home. */
export type VerdictItem = {
  readonly id: string;
  readonly name: string;
  readonly grams: number;
  readonly colour: Colour;
  readonly pattern: Pattern;
  /** Children it was not packed for. */
  readonly notFor: readonly string[];
};

/** One entry in the history of a verdict that was amended. */
type Amendment = {
  readonly at: Date;
  readonly change: Readonly<Record<string, string | number | null>>;
};

export type VerdictDay = {
  readonly date: Day;
  readonly lunchId: string;
  readonly title: string;
  readonly angle: string;
  readonly items: readonly VerdictItem[];
  readonly children: readonly {
    readonly id: string;
    readonly name: string;
    readonly facePoints: FacePoints;
  }[];
  readonly cells: readonly VerdictState[];
  /** Verdicts with more than one entry, each entry oldest first. */
  readonly amended: readonly {
    readonly item: string;
    readonly child: string;
    readonly facePoints: FacePoints;
    readonly entries: readonly Amendment[];
  }[];
  readonly facts: FactsState;
};

/** A day whose tins came home, or undefined when no lunch is pencilled for it. */
export async function loadVerdictDay({ db }: Context, date: Day): Promise<VerdictDay | undefined> {
  const episode = await readEpisode(db, mondayOf(date));
  const lunch = episode?.lunches.find((one) => one.date === date);
  if (!episode || !lunch) return undefined;
  const items = lunch.items
    .filter(({ fate }) => fate !== "scrapped")
    .map((item): VerdictItem => {
      const { id, name, grams, colour, pattern, shares } = viewItem(item);
      const notFor = shares.filter(({ amount }) => amount === 0).map(({ childId }) => childId);
      return { id, name, grams, colour, pattern, notFor };
    });
  const [children, cells, facts] = await Promise.all([
    db.child.findMany({ where: { retiredAt: null }, orderBy: { position: "asc" } }),
    readVerdictCells(
      db,
      items.map(({ id }) => id),
    ),
    readDayFacts(db, lunch.id),
  ]);
  // The lunch may have been removed while the page was read.
  if (!facts) return undefined;
  const people = children.map(({ id, onScreenName: name, birthMonth, facePoints }) => ({
    ...{ id, name },
    facePoints: facePointsFor(
      birthMonth === null ? null : ageInMonths(birthMonth, date),
      facePoints === 3 || facePoints === 5 || facePoints === 7 ? facePoints : null,
    ),
  }));
  return {
    ...{ date, lunchId: lunch.id, angle: lunch.angle, items, children: people, cells, facts },
    title: episode.theme?.name ?? (episode.workingTitle || "Untitled week"),
    amended: await readAmended(db, items, people),
  };
}

const Change = z.record(z.string(), z.union([z.string(), z.number(), z.null()]));

async function readAmended(
  db: Db,
  items: readonly VerdictItem[],
  children: VerdictDay["children"],
): Promise<VerdictDay["amended"]> {
  const events = await db.reactionEvent.findMany({
    where: { itemId: { in: items.map(({ id }) => id) } },
    orderBy: [{ madeAt: "asc" }, { id: "asc" }],
    select: { itemId: true, childId: true, madeAt: true, changeJson: true },
  });
  return [...groupBy(events, ({ itemId, childId }) => `${itemId} ${childId}`).values()].flatMap(
    (own) => {
      const item = items.find(({ id }) => id === own[0]?.itemId);
      const child = children.find(({ id }) => id === own[0]?.childId);
      if (!item || !child || !isAmended(own)) return [];
      const entries = own.map(({ madeAt, changeJson }) => ({
        at: madeAt,
        change: parseColumn(Change, changeJson, "ReactionEvent.change"),
      }));
      return [{ item: item.name, child: child.name, facePoints: child.facePoints, entries }];
    },
  );
}

/** Whether some field was set more than once: a first eaten, then a first face, amend nothing. */
function isAmended(events: readonly { readonly changeJson: string }[]): boolean {
  const fields = events.flatMap(({ changeJson }) => Object.keys(JSON.parse(changeJson) as object));
  return new Set(fields).size < fields.length;
}
