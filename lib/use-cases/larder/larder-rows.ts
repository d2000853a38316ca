import { groupBy } from "#lib/base/index.ts";
import { addDays, daysBetween, nearDay, type Day } from "#lib/calendar/index.ts";
import type { Colour, Food, Part, Pattern } from "#lib/catalog/index.ts";
import {
  keepUntilWritten,
  readChildren,
  readFoodsById,
  readFoodStates,
  readLots,
  readOwedFoods,
  readProductGlances,
  readSchoolRules,
  readSeen,
  readSettings,
  type FoodState,
  type ProductGlance,
  type Seen,
} from "#lib/db/index.ts";
import { describeStanding, type Acceptance, type StandingKind } from "#lib/reactions/index.ts";
import { ruleHolds, ruleNames, type SchoolRule } from "#lib/safety/index.ts";
import { describeGrams, lastDayOf, type Lot } from "#lib/shopping/index.ts";
import type { Context } from "../context.ts";
import { loadEstimates } from "../load-estimates.ts";

/** Days before and after today in which a food counts as in use. */
const IN_USE_DAYS = 31;
/** Days to the last day from which stock is to be used soon. */
const SOON_DAYS = 4;

/** How a child stands with a food, drawn as a dot on a bar. */
export type StandingView = {
  readonly childId: string;
  readonly kind: StandingKind;
  /** "resting to 12 Mar" */
  readonly words: string;
  /** Shares 0–1: the estimate and the ends of its 80 % interval. */
  readonly estimate: number;
  readonly low: number;
  readonly high: number;
  readonly tastings: number;
  readonly sentence: string;
};

/** A short remark on a food; a broken rule is marked as one. */
type LarderNote = { readonly text: string; readonly isBroken: boolean };

/** A food as the Larder's table shows it. */
export type LarderRow = {
  readonly id: string;
  readonly name: string;
  readonly family: string;
  readonly group: string;
  readonly part: Part;
  readonly colours: readonly Colour[];
  readonly motifs: readonly string[];
  readonly pattern: Pattern;
  readonly isSeasonal: boolean;
  readonly from: string;
  readonly onHand: string;
  readonly useBy: Day | null;
  readonly useByText: string;
  readonly lastOn: Day | null;
  readonly seenText: string;
  readonly restText: string;
  readonly notes: readonly LarderNote[];
  readonly standings: readonly StandingView[];
  readonly isInUse: boolean;
  readonly isSoon: boolean;
  readonly isRetired: boolean;
};

/** Everything the Larder's table is drawn from. */
export type LarderTable = {
  readonly rows: readonly LarderRow[];
  readonly children: readonly { readonly id: string; readonly name: string }[];
  readonly products: readonly ProductGlance[];
  /** The foods themselves, for matching names; the same array as long as nothing is written. */
  readonly foods: readonly Food[];
};

/** The table of all foods that are not merged away, by name; kept until something is written. */
export function readLarderTable({ db, today }: Context): Promise<LarderTable> {
  return keepUntilWritten(db, `larder ${today}`, () => build({ db, today }));
}

type Ground = {
  readonly today: Day;
  readonly seen: ReadonlyMap<string, Seen>;
  readonly lots: ReadonlyMap<string, readonly Lot[]>;
  readonly products: ReadonlyMap<string, readonly ProductGlance[]>;
  readonly owed: ReadonlyMap<string, Day>;
  readonly rules: readonly SchoolRule[];
  readonly foodRestDays: number;
  readonly people: LarderTable["children"];
  readonly of: (childId: string, foodId: string, familyId: string) => Acceptance;
  readonly familyName: ReadonlyMap<string, string>;
};

async function build({ db, today }: Pick<Context, "db" | "today">): Promise<LarderTable> {
  const [states, seen, lots, products, owed, children, rules, settings, families, learned] =
    await Promise.all([
      readFoodStates(db),
      readSeen(db, "food", today),
      readLots(db),
      readProductGlances(db),
      readOwedFoods(db),
      readChildren(db),
      readSchoolRules(db),
      readSettings(db),
      db.family.findMany({ select: { id: true, name: true } }),
      loadEstimates({ db, today }),
    ]);
  const standing = states.filter((state) => state.mergedIntoId === null);
  const foods = await readFoodsById(
    db,
    standing.map(({ id }) => id),
  );
  const people = children
    .filter((child) => !child.isRetired)
    .map(({ id, onScreenName }) => ({ id, name: onScreenName }));
  const ground: Ground = {
    ...{ today, seen, owed, people },
    lots: groupBy(lots, (lot) => lot.foodId),
    products: groupBy(products, (product) => product.foodId),
    rules: rules
      .filter(({ isActive, rule }) => isActive && ruleHolds(rule, today))
      .map((r) => r.rule),
    foodRestDays: settings.foodRestDays,
    of: learned.of,
    familyName: new Map(families.map(({ id, name }) => [id, name])),
  };
  const rows = standing.flatMap((state) => {
    const food = foods.get(state.id);
    return food ? [rowOf(food, state, ground)] : [];
  });
  rows.sort((left, right) => left.name.localeCompare(right.name, "en"));
  return { rows, children: people, products, foods: [...foods.values()] };
}

function rowOf(food: Food, state: FoodState, ground: Ground): LarderRow {
  const { today, seen } = ground;
  const on = seen.get(food.id);
  const lots = ground.lots.get(food.id) ?? [];
  const ends = lots.flatMap((lot) => lastDayOf(lot, food.shelf) ?? []).sort();
  const useBy = ends[0] ?? null;
  const near = [on?.last, on?.next].some(
    (date) => date != null && Math.abs(daysBetween(date, today)) <= IN_USE_DAYS,
  );
  return {
    id: food.id,
    name: food.name.charAt(0).toUpperCase() + food.name.slice(1),
    family: ground.familyName.get(food.family) ?? food.family,
    ...{ group: food.group, part: food.parts[0] ?? "extra", colours: food.colours },
    ...{ motifs: food.motifs, pattern: food.pattern },
    isSeasonal: food.seasonMonths?.includes(Number(today.slice(5, 7))) ?? false,
    from: ground.products.get(food.id)?.flatMap(({ shops }) => shops)[0] ?? "",
    onHand: onHandText(lots, food),
    useBy,
    useByText: useBy === null ? "" : nearDay(useBy, today),
    lastOn: on?.last ?? null,
    seenText: seenText(on, today),
    restText: restText(food, on, ground),
    notes: notesOn(food, state, ground),
    standings: ground.people.map((child) => standingView(food, child, ground)),
    isInUse: near || lots.length > 0,
    isSoon: useBy !== null && daysBetween(today, useBy) <= SOON_DAYS,
    isRetired: state.isRetired,
  };
}

function onHandText(lots: readonly Lot[], food: Food): string {
  if (lots.length === 0) return "none";
  const grams = lots.reduce((sum, lot) => sum + lot.grams, 0);
  const one = food.countUnit === null ? undefined : food.unitWeights[food.countUnit];
  const count = one === undefined ? 0 : Math.round(grams / one);
  const counted = count > 1 ? `, about ${count}` : "";
  const isFrozen = lots.every((lot) => lot.place === "freezer");
  return `${describeGrams(grams)}${counted}${isFrozen ? ", frozen" : ""}`;
}

function seenText(on: Seen | undefined, today: Day): string {
  if (on?.last == null) return on?.next == null ? "not yet" : `first on ${nearDay(on.next, today)}`;
  const days = daysBetween(on.last, today);
  return days === 0 ? "today" : days === 1 ? "yesterday" : `${days} days ago`;
}

function restText(food: Food, on: Seen | undefined, ground: Ground): string {
  const { today } = ground;
  const isSoonOn =
    on?.last != null && on.next !== null && daysBetween(today, on.next) <= IN_USE_DAYS;
  const next = isSoonOn && on.next !== null ? `, on ${nearDay(on.next, today)}` : "";
  if (food.isStaple) return `staple, no rest${next}`;
  const days = food.restDays ?? ground.foodRestDays;
  const until = on?.last != null ? addDays(on.last, days) : today;
  if (until > today) return `rests to ${nearDay(until, today)}${next}`;
  return `rest ${days === 1 ? "1 day" : `${days} days`}${next}`;
}

function notesOn(food: Food, state: FoodState, ground: Ground): LarderNote[] {
  const products = ground.products.get(food.id) ?? [];
  const notes: LarderNote[] = [];
  const note = (text: string, isBroken = false): number => notes.push({ text, isBroken });
  if (state.isRecalled || products.some((product) => product.isRecalled)) note("recalled", true);
  for (const rule of ground.rules) if (ruleNames(rule, food)) note(rule.name, true);
  const owed = ground.owed.get(food.id);
  if (owed !== undefined) note(`owed, ${nearDay(owed, ground.today)}`);
  const told = products.find(({ provenance }) => provenance !== "bought");
  if (told) note(`${told.provenance}: disclose`);
  if (products.length > 0 && products.every(({ status }) => status !== "available"))
    note(products.every(({ status }) => status === "discontinued") ? "discontinued" : "none sold");
  if (state.isRetired) note("retired");
  return notes;
}

function standingView(
  food: Food,
  child: { readonly id: string; readonly name: string },
  { of, today }: Ground,
): StandingView {
  const acceptance = of(child.id, food.id, food.family);
  const { standing, estimate, low, high, history } = acceptance;
  return {
    childId: child.id,
    kind: standing.kind,
    words:
      standing.kind === "resting" ? `resting to ${nearDay(standing.until, today)}` : standing.kind,
    ...{ estimate, low, high, tastings: history?.tastings ?? 0 },
    sentence: describeStanding(acceptance, { child: child.name, food: food.name }, today),
  };
}
