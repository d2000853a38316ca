import {
  addDays,
  daysOfWeek,
  overlapsSeason,
  SeasonWindow,
  weeksLater,
  weeksOfMonth,
  type Day,
} from "#lib/calendar/index.ts";
import {
  keepUntilWritten,
  parseColumn,
  readDaysOff,
  readEpisodes,
  readSettings,
  type Db,
  type EpisodeRecord,
  type LunchRecord,
} from "#lib/db/index.ts";
import {
  checkRest,
  closestWeeks,
  describeRest,
  distinctivenessOf,
  historyOf,
  type Distinctiveness,
  type RepeatLevel,
  type RestWarning,
  type ShownWeek,
} from "#lib/repeats/index.ts";
import { findingWord } from "#lib/safety/index.ts";
import type { Context } from "./context.ts";
import { stageOf, type Stage } from "./episode-stage.ts";
import { viewItem, type ItemView } from "./lunch-view.ts";
import { readChecks, type Checks, type FindingView, type WeekChecks } from "./read-checks.ts";
import { readRestRules, readShownWeeks } from "./shown-weeks.ts";

/** How far back the slate looks for what a week echoes. */
const ECHO_WEEKS = 60;

type LunchView = {
  readonly id: string;
  readonly date: Day;
  readonly angle: string;
  readonly revision: number;
  readonly minutes: number | null;
  /** Nothing was packed or published, so it may still change its day. */
  readonly isOpen: boolean;
  readonly items: readonly ItemView[];
  readonly repeats: readonly RepeatView[];
  /** The most serious broken rule that nobody has decided to keep, for the tag on the tray. */
  readonly broken: BrokenView | undefined;
  /** What the checks say; filled on the page of the week. */
  readonly findings: readonly FindingView[];
};

type BrokenView = {
  /** For the tag: "almonds: school rule". */
  readonly short: string;
  readonly sentence: string;
  readonly itemIds: readonly string[];
};

type RepeatView = {
  readonly foodId: string | null;
  readonly on: Day;
  /** For the paper tag: "cucumber, 9 days ago". */
  readonly short: string;
  /** What, when last, how many days, which rule. */
  readonly sentence: string;
};

export type WeekView = {
  readonly monday: Day;
  readonly days: readonly {
    readonly date: Day;
    readonly offLabel: string | undefined;
    readonly lunch: LunchView | undefined;
  }[];
  readonly episode:
    | {
        readonly id: string;
        readonly number: number;
        readonly title: string;
        readonly themeId: string | null;
        readonly workingTitle: string;
        readonly notes: string;
        readonly surprise: string;
        readonly revealOn: string;
        readonly stage: Stage;
        readonly revision: number;
        readonly echo: { readonly percent: number; readonly name: string } | undefined;
        readonly themeRepeats: readonly string[];
        /** Filled on the page of the week. */
        readonly checks: WeekChecks | undefined;
      }
    | undefined;
};

/** How much of the checks a page shows: one tag a lunch, or every finding with its source. */
type ChecksShown = "tag" | "in-full";

export type SlateView = {
  readonly weeks: readonly WeekView[];
  readonly seasonThemes: readonly { readonly id: string; readonly name: string }[];
};

/**
 * The weeks of a month, empty ones too, with what they repeat and how closely they echo earlier ones.
 * Shared until something is written, as one leafs to and fro between months.
 */
export function loadSlate({ db }: Context, monthDay: Day): Promise<SlateView> {
  const mondays = weeksOfMonth(monthDay);
  return keepUntilWritten(db, `slate ${mondays.join(" ")}`, async () => {
    const { weeks } = await loadWeeks(db, mondays, "tag");
    return { weeks, seasonThemes: await themesInSeason(db, mondays) };
  });
}

/** One week as the slate shows it, with the themes in season then; shared until something is written. */
export async function loadSlateWeek(
  { db }: Context,
  monday: Day,
): Promise<{
  readonly week: WeekView | undefined;
  readonly themes: SlateView["seasonThemes"];
  readonly unset: Checks["unset"];
}> {
  return keepUntilWritten(db, `slate week ${monday}`, async () => {
    const { weeks, unset } = await loadWeeks(db, [monday], "in-full");
    return { week: weeks[0], themes: await themesInSeason(db, [monday]), unset };
  });
}

async function loadWeeks(
  db: Db,
  mondays: readonly Day[],
  shownAs: ChecksShown,
): Promise<{ readonly weeks: WeekView[]; readonly unset: Checks["unset"] }> {
  const first = mondays[0];
  const last = mondays.at(-1);
  if (!first || !last) return { weeks: [], unset: [] };
  const settings = await readSettings(db);
  const [episodes, shown, rules, daysOff] = await Promise.all([
    readEpisodes(db, first, last),
    readShownWeeks(db, weeksLater(first, -ECHO_WEEKS), addDays(last, 6)),
    readRestRules(db, settings),
    db.dayOff.findMany({ where: { to: { gte: first }, from: { lte: addDays(last, 6) } } }),
  ]);
  const history = historyOf(shown);
  const tells = distinctivenessOf(shown);
  const nameOf = await namesFor(db, shown);
  const checks = await readChecks(
    db,
    episodes.flatMap((episode) => episode.lunches),
    settings,
  );
  const weeks = mondays.map((monday) => {
    const episode = episodes.find((one) => one.weekOf === monday);
    const week = shown.find((one) => one.week === monday);
    const warnings = week ? checkRest(week, history, rules) : [];
    return {
      monday,
      days: daysOfWeek(monday)
        .filter((_, index) => settings.schoolDays.includes(index + 1))
        .map((date) => ({
          date,
          offLabel: daysOff.find((off) => off.from <= date && off.to >= date)?.label,
          lunch: lunchOn(episode, date, warnings, nameOf, { checks, shownAs }),
        })),
      episode: episode && {
        id: episode.id,
        number: episode.number,
        title: episode.theme?.name ?? (episode.workingTitle || "Untitled week"),
        themeId: episode.theme?.id ?? null,
        workingTitle: episode.workingTitle,
        notes: episode.notes,
        surprise: episode.surprise,
        revealOn: episode.surpriseRevealOn ?? "",
        stage: stageOf(episode),
        revision: episode.revision,
        echo: week && echoFor(week, shown, tells, nameOf),
        themeRepeats: warnings
          .filter((warning) => warning.level === "theme")
          .map((warning) => describeRest(warning, nameOf)),
        checks: shownAs === "in-full" ? checks.ofWeek(episode.lunches) : undefined,
      },
    };
  });
  return { weeks, unset: checks.unset };
}

type NameOf = (level: RepeatLevel, id: string) => string;

function lunchOn(
  episode: EpisodeRecord | undefined,
  date: Day,
  warnings: readonly RestWarning[],
  nameOf: NameOf,
  { checks, shownAs }: { readonly checks: Checks; readonly shownAs: ChecksShown },
): LunchView | undefined {
  const lunch = episode?.lunches.find((one) => one.date === date);
  if (!lunch) return undefined;
  const inFull = shownAs === "in-full" ? checks.inFull(lunch, episode?.theme?.motifs ?? []) : [];
  return {
    findings: inFull,
    broken: shownAs === "tag" && !lunch.isPacked ? brokenIn(lunch, checks) : undefined,
    id: lunch.id,
    date,
    angle: lunch.angle,
    revision: lunch.revision,
    minutes: lunch.minutesUsed,
    isOpen: !lunch.isPacked && episode !== undefined && stageOf(episode) !== "published",
    items: lunch.items.map(viewItem),
    repeats: warnings
      .filter((warning) => warning.on === date && warning.foodId !== null)
      // The one that comes back soonest for its rule stands first: it gets the paper tag.
      .sort((one, other) => one.daysAgo / one.restDays - other.daysAgo / other.restDays)
      .map((warning) => ({
        foodId: warning.foodId,
        on: date,
        short: `${shortName(warning, nameOf)}, ${warning.daysAgo} ${warning.daysAgo === 1 ? "day" : "days"} ago`,
        sentence: describeRest(warning, nameOf),
      })),
  };
}

/** The most serious broken rule of a lunch that is still to be packed. */
function brokenIn(lunch: LunchRecord, checks: Checks): BrokenView | undefined {
  const broken = checks.broken(lunch);
  if (!broken) return undefined;
  const { kind, sentence, itemIds } = broken;
  const food = lunch.items.find(({ id }) => id === itemIds[0])?.food.name ?? "this lunch";
  return { short: `${food}: ${findingWord(kind)}`, sentence, itemIds };
}

/** For a tag: a product goes by its food's name, which is on the tray. */
function shortName({ level, what, foodId }: RestWarning, nameOf: NameOf): string {
  return level === "product" && foodId !== null ? nameOf("food", foodId) : nameOf(level, what);
}

function echoFor(
  week: ShownWeek,
  shown: readonly ShownWeek[],
  tells: Distinctiveness,
  nameOf: NameOf,
): { percent: number; name: string } | undefined {
  const earlier = shown.filter((one) => one.week < week.week);
  const closest = closestWeeks(week, earlier, 1, tells)[0];
  if (!closest) return undefined;
  const name =
    closest.week.themeId === null ? closest.week.week : nameOf("theme", closest.week.themeId);
  return { percent: Math.round(closest.echo.value * 100), name };
}

/** Names of everything that a warning may speak of. */
async function namesFor(db: Db, shown: readonly ShownWeek[]): Promise<NameOf> {
  const foodIds = [...new Set(shown.flatMap((week) => week.items.map((item) => item.foodId)))];
  const [foods, families, tricks, themes, products] = await Promise.all([
    db.food.findMany({ where: { id: { in: foodIds } }, select: { id: true, name: true } }),
    db.family.findMany({ select: { id: true, name: true } }),
    db.trick.findMany({ select: { id: true, name: true } }),
    db.theme.findMany({ select: { id: true, name: true } }),
    db.product.findMany({ select: { id: true, name: true } }),
  ]);
  const names = {
    food: nameMap(foods),
    family: nameMap(families),
    trick: nameMap(tricks),
    theme: nameMap(themes),
    product: nameMap(products),
    motif: new Map<string, string>(),
  } satisfies Record<RepeatLevel, Map<string, string>>;
  return (level, id) => names[level].get(id) ?? id;
}

function nameMap(rows: readonly { id: string; name: string }[]): Map<string, string> {
  return new Map(rows.map(({ id, name }) => [id, name]));
}

async function themesInSeason(db: Db, mondays: readonly Day[]): Promise<SlateView["seasonThemes"]> {
  const first = mondays[0];
  const last = mondays.at(-1);
  if (!first || !last) return [];
  const [themes, daysOff] = await Promise.all([
    db.theme.findMany({ where: { retiredAt: null }, orderBy: { name: "asc" } }),
    readDaysOff(db),
  ]);
  return themes
    .filter((theme) =>
      overlapsSeason(
        parseColumn(SeasonWindow, theme.seasonJson, "Theme.season"),
        first,
        addDays(last, 6),
        daysOff,
      ),
    )
    .map(({ id, name }) => ({ id, name }));
}
