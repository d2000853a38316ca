import { addDays, mondayOf, type Day } from "#lib/calendar/index.ts";
import type { Trait } from "#lib/catalog/index.ts";
import { ageInMonths, facePointsFor, type FacePoints } from "#lib/reactions/index.ts";
import { readEpisode, readSettings, type ItemRecord, type Settings } from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import { stageOf, type Stage } from "./episode-stage.ts";
import { viewItem, type ItemView } from "./lunch-view.ts";
import { readChecks, type FindingView, type Unset } from "./read-checks.ts";

type ChildView = {
  readonly id: string;
  readonly name: string;
  readonly portionFactor: number;
  readonly facePoints: FacePoints;
};

type VerdictView = {
  readonly itemId: string;
  readonly childId: string;
  readonly eaten: number | null;
  readonly face: number | null;
  readonly quote: string;
  readonly note: string;
  readonly revision: number;
};

export type DayView = {
  readonly date: Day;
  readonly lunchId: string;
  readonly isPacked: boolean;
  readonly angle: string;
  readonly minutesUsed: number | null;
  readonly episode: {
    readonly number: number;
    readonly title: string;
    readonly stage: Stage;
    readonly lunchNumber: number;
    readonly lunchCount: number;
  };
  readonly items: readonly (ItemView & {
    readonly keep: string;
    readonly insteadOf: string | null;
  })[];
  readonly children: readonly ChildView[];
  readonly verdicts: readonly VerdictView[];
  readonly reminders: readonly string[];
  readonly findings: readonly FindingView[];
  /** What cannot be checked for want of a record. */
  readonly unset: readonly Unset[];
  readonly times: Pick<Settings, "departure" | "verdictAt" | "morningFrom" | "cooks">;
  readonly dayBefore: Day | undefined;
  readonly dayAfter: Day | undefined;
};

/** Everything one shoot day needs, or undefined when no lunch is pencilled for it. */
export async function loadDay({ db }: Context, date: Day): Promise<DayView | undefined> {
  const [episode, settings] = await Promise.all([
    readEpisode(db, mondayOf(date)),
    readSettings(db),
  ]);
  const lunch = episode?.lunches.find((one) => one.date === date);
  if (!episode || !lunch) return undefined;
  const [checks, children, verdicts, before, after] = await Promise.all([
    readChecks(db, [lunch], settings),
    db.child.findMany({ where: { retiredAt: null }, orderBy: { position: "asc" } }),
    db.reaction.findMany({ where: { itemId: { in: lunch.items.map((item) => item.id) } } }),
    db.lunch.findFirst({
      where: { date: { lt: date } },
      orderBy: { date: "desc" },
      select: { date: true },
    }),
    db.lunch.findFirst({
      where: { date: { gt: date } },
      orderBy: { date: "asc" },
      select: { date: true },
    }),
  ]);
  const names = new Map(lunch.items.map((item) => [item.id, item.food.name]));
  return {
    date,
    lunchId: lunch.id,
    isPacked: lunch.isPacked,
    angle: lunch.angle,
    minutesUsed: lunch.minutesUsed,
    episode: {
      number: episode.number,
      title: episode.theme?.name ?? (episode.workingTitle || "Untitled week"),
      stage: stageOf(episode),
      lunchNumber: episode.lunches.indexOf(lunch) + 1,
      lunchCount: episode.lunches.length,
    },
    items: lunch.items.map((item) => ({
      ...viewItem(item),
      keep: KEEP[item.food.holding],
      insteadOf: item.insteadOfId === null ? null : (names.get(item.insteadOfId) ?? null),
    })),
    children: children.map((child) => ({
      id: child.id,
      name: child.onScreenName,
      portionFactor: child.portionFactor,
      facePoints: facePointsFor(
        child.birthMonth === null ? null : ageInMonths(child.birthMonth, date),
        asFacePoints(child.facePoints),
      ),
    })),
    verdicts: verdicts.map(({ itemId, childId, eaten, face, quote, note, revision }) => ({
      itemId,
      childId,
      eaten,
      face,
      quote,
      note,
      revision,
    })),
    reminders: remindersFor(
      lunch.items,
      children.map((child) => child.onScreenName),
    ),
    findings: checks.inFull(lunch, episode.theme?.motifs ?? []),
    unset: checks.unset,
    times: settings,
    dayBefore: before ? addDays(before.date as Day, 0) : undefined,
    dayAfter: after ? addDays(after.date as Day, 0) : undefined,
  };
}

const KEEP: Readonly<Record<ItemRecord["food"]["holding"], string>> = {
  cold: "cold, two ice packs",
  hot: "hot, preheated flask",
  either: "cold or hot, not between",
  none: "room",
};

function asFacePoints(points: number | null): FacePoints | null {
  return points === 3 || points === 5 || points === 7 ? points : null;
}

/** What the items ask for, each said once. Two cold sources: USDA, "bag lunches", 2019. */
function remindersFor(items: readonly ItemRecord[], onScreenNames: readonly string[]): string[] {
  const packed = items.filter((item) => item.fate !== "scrapped");
  const has = (trait: Trait): boolean => packed.some((item) => item.food.traits.includes(trait));
  return [
    packed.some((item) => item.food.holding === "cold") &&
      "Two cold sources in the bag: an ice pack and a frozen drink, or two packs.",
    packed.some((item) => item.food.holding === "hot") &&
      "Fill the flask with boiling water first; the food goes in at 74 °C (165 °F) or above.",
    has("needs-spoon") && "Pack a spoon.",
    has("needs-fork") && "Pack a fork.",
    (has("messy") || has("sticky")) && "Pack a napkin.",
    has("browns-when-cut") && "Cut late, or a drop of lemon: it browns.",
    onScreenNames.length > 0 && `On-screen names only: ${onScreenNames.join(", ")}.`,
  ].filter((line) => line !== false);
}
