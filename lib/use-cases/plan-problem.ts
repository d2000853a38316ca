import { z } from "zod";
import {
  addDays,
  daysBetween,
  overlapsSeason,
  SeasonWindow,
  weeksLater,
  type Day,
} from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";
import {
  keepUntilWritten,
  parseColumn,
  readDaysOff,
  readFoods,
  readOfferedFoods,
  readSettings,
  readTricks,
  type Db,
} from "#lib/db/index.ts";
import {
  DEFAULT_WEIGHTS,
  type PlanItem,
  type PlanPart,
  type PlanProblem,
  type PlanTheme,
} from "#lib/planner/index.ts";
import { historyOf, type History, type RestRules } from "#lib/repeats/index.ts";
import { withCutting } from "./cutting-minutes.ts";
import { acceptanceOf, restingItems } from "./expected-liking.ts";
import { owedForPlan } from "./errands/owed-for-plan.ts";
import { readForbidden } from "./forbidden-items.ts";
import { loadEstimates } from "./load-estimates.ts";
import { withNewFoods } from "./new-foods.ts";
import { shootDays } from "./pencil-week.ts";
import { readRestRules, readShownWeeks } from "./shown-weeks.ts";
import { bonusNearItsDay } from "./theme-moments.ts";
import { withEcho } from "./with-echo.ts";
import { withShops } from "./with-shops.ts";
import { nearPairs, withThemesApart } from "./with-themes-apart.ts";
import { withTricks } from "./with-tricks.ts";

/** What a lunch holds when nobody says otherwise (common practice, no source). */
const PARTS: readonly PlanPart[] = [
  { part: "main", min: 1, max: 1 },
  { part: "grain", min: 1, max: 1 },
  { part: "vegetable", min: 1, max: 1 },
  { part: "fruit", min: 1, max: 1 },
  { part: "dip", min: 0, max: 1 },
];
const LOOK_BACK_WEEKS = 60;

/**
 * The planner's question for some weeks, in date order and at least one, read from the records: foods
 * plain and in tricks, where they are sold, and themes that stay apart. Verdicts count up to `today`, or
 * up to the first week when it is left out.
 */
export async function planProblemFor(
  db: Db,
  mondays: readonly Day[],
  today?: Day,
): Promise<PlanProblem> {
  const plain = await plainProblem(db, mondays, today);
  const [first, last] = [mondays[0] as Day, mondays.at(-1) as Day];
  const [foods, tricks, settings, shown, themes] = await Promise.all([
    readFoods(db),
    readTricks(db),
    readSettings(db),
    readShownWeeks(db, weeksLater(first, -LOOK_BACK_WEEKS), weeksLater(last, LOOK_BACK_WEEKS)),
    keepUntilWritten(db, "themes and their near ones", () => readNearThemes(db)),
  ]);
  const dressed = withTricks(withThemesApart(plain, themes.apart), {
    ...{ foods, tricks, shown, history: historyOf(shown) },
    motifsOfTheme: themes.motifs,
    trickRestDays: settings.trickRestDays,
  });
  return withShops(db, withEcho(dressed, shown, themes.motifs), foods, first);
}

async function readNearThemes(db: Db): Promise<{
  readonly motifs: ReadonlyMap<string, readonly string[]>;
  readonly apart: PlanProblem["themesApart"];
}> {
  const rows = await db.theme.findMany({ where: { retiredAt: null }, orderBy: { id: "asc" } });
  const themes = rows.map(({ id, name, motifsJson }) => ({
    ...{ id, name },
    motifs: parseColumn(z.array(z.string()), motifsJson, "Theme.motifs"),
  }));
  return {
    motifs: new Map(themes.map(({ id, motifs }) => [id, motifs])),
    apart: nearPairs(themes),
  };
}

/** The question with every food plain, no shops, no echo, and themes near each other unnoticed. */
async function plainProblem(
  db: Db,
  mondays: readonly Day[],
  today: Day | undefined,
): Promise<PlanProblem> {
  const first = mondays[0] as Day;
  const last = mondays.at(-1) as Day;
  const settings = await readSettings(db);
  const [foods, rules, shown, children, days, learned] = await Promise.all([
    readOfferedFoods(db),
    readRestRules(db, settings),
    readShownWeeks(db, weeksLater(first, -LOOK_BACK_WEEKS), weeksLater(last, LOOK_BACK_WEEKS)),
    db.child.findMany({
      where: { retiredAt: null },
      select: { id: true, onScreenName: true, birthMonth: true },
    }),
    Promise.all(mondays.map((monday) => shootDays(db, monday))),
    loadEstimates({ db, today: today ?? first }),
  ]);
  const history = historyOf(shown);
  const themes = await themesFor(db, mondays, history, rules);
  const liking = (food: Food) => acceptanceOf(learned, food, children);
  const items = withCutting(
    itemsFor(foods, liking, themes, history, first),
    foods,
    children.map(({ birthMonth }) => birthMonth),
    first,
  );
  const forbidden = [
    ...(await readForbidden(db, foods, items, days.flat())),
    ...restingItems(learned, children, items, days.flat()),
  ];
  const met = new Set<string>(learned.met.map(({ foodId }) => foodId));
  const isMet = (foodId: string): boolean =>
    met.has(foodId) || history.lastBefore("food", foodId, first) !== undefined;
  const ground = { parts: PARTS, forbidden, days: days.flat(), weeks: mondays.length, settings };
  return {
    weeks: mondays.map((monday, index) => ({
      monday,
      days: (days[index] ?? []).map((date) => ({ date, minutesMax: settings.morningMinutes })),
      budgetCents: settings.weekBudgetCents,
      lockedThemeId: null,
    })),
    themes: themes.map(({ theme }) => theme),
    parts: PARTS,
    ...withNewFoods(items, isMet, ground),
    children: children.map(({ id, onScreenName }) => ({ id, name: onScreenName })),
    shops: [],
    rests: restsFor(foods, items, history, rules),
    quotas: [],
    forbidden,
    themesApart: [],
    owed: await owedForPlan(db, first, items),
    locks: [],
    wishes: [],
    weights: DEFAULT_WEIGHTS,
  };
}

type Themed = { readonly theme: PlanTheme; readonly motifs: ReadonlySet<string> };

async function themesFor(
  db: Db,
  mondays: readonly Day[],
  history: History,
  rules: RestRules,
): Promise<Themed[]> {
  const [rows, daysOff] = await Promise.all([
    db.theme.findMany({ where: { retiredAt: null }, orderBy: { id: "asc" } }),
    readDaysOff(db),
  ]);
  return rows.map((row) => {
    const season = parseColumn(SeasonWindow, row.seasonJson, "Theme.season");
    const motifs = parseColumn(z.array(z.string()), row.motifsJson, "Theme.motifs");
    return {
      motifs: new Set(motifs),
      theme: {
        id: row.id,
        name: row.name,
        restDays: row.restDays ?? rules.days.theme,
        shownOn: history.daysOf("theme", row.id),
        echo: 0,
        notIn: mondays
          .filter((monday) => !overlapsSeason(season, monday, addDays(monday, 4), daysOff))
          .map((monday) => ({ monday, why: "out of season" })),
        bonus: bonusNearItsDay(season, mondays),
      },
    };
  });
}

/** Every food once for each part it can play, with what each child is expected to eat of it. */
function itemsFor(
  foods: readonly Food[],
  liking: (food: Food) => PlanItem["acceptance"],
  themes: readonly Themed[],
  history: History,
  first: Day,
): PlanItem[] {
  const parts = new Set(PARTS.map(({ part }) => part));
  return foods.flatMap((food) => {
    const lastOn = history.lastBefore("food", food.id, first);
    const part = food.parts.find((one) => parts.has(one));
    if (!part || food.isStaple) return [];
    const acceptance = liking(food);
    return {
      id: food.id,
      name: food.name,
      foodId: food.id,
      familyId: food.family,
      trickIds: [],
      part,
      acceptance,
      isNew: false,
      costCents: food.servingCents * Math.max(1, acceptance.length),
      minutes: morningMinutes(food),
      shopIds: [],
      wasteCents: 0,
      colours: food.colours,
      fits: themes
        .map(({ theme, motifs }) => ({
          themeId: theme.id,
          fit: Math.min(1, food.motifs.filter((motif) => motifs.has(motif)).length / 2),
        }))
        .filter(({ fit }) => fit > 0),
      daysUnseen: lastOn === undefined ? null : daysBetween(lastOn, first),
      echo: 0,
      isOnHand: false,
    };
  });
}

function morningMinutes(food: Food): number {
  return food.prepSteps
    .filter((step) => step.handsOn && step.earliest === "morning")
    .reduce((sum, step) => sum + step.minutes, 0);
}

function restsFor(
  foods: readonly Food[],
  items: readonly PlanItem[],
  history: History,
  rules: RestRules,
): PlanProblem["rests"] {
  const own = (level: "food" | "family", id: string): number =>
    rules.own.get(`${level}:${id}`) ?? rules.days[level];
  const families = [...new Set(foods.map((food) => food.family))];
  return [
    ...items.map((item) => ({
      id: `food:${item.foodId}`,
      level: "food" as const,
      name: item.name,
      restDays: Math.max(1, own("food", item.foodId)),
      itemIds: [item.id],
      shownOn: history.daysOf("food", item.foodId),
    })),
    ...families.map((family) => ({
      id: `family:${family}`,
      level: "family" as const,
      name: family,
      restDays: Math.max(1, own("family", family)),
      itemIds: items.filter((item) => item.familyId === family).map((item) => item.id),
      shownOn: history.daysOf("family", family),
    })),
  ].filter((group) => group.itemIds.length > 0);
}
