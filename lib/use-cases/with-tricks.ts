import { groupBy } from "#lib/base/index.ts";
import type { Food, Trick } from "#lib/catalog/index.ts";
import type { PlanItem, PlanProblem, RestGroup } from "#lib/planner/index.ts";
import type { History, ShownWeek } from "#lib/repeats/index.ts";
import { guidanceFor } from "#lib/safety/index.ts";

/** Dressed foods that a theme may add to a part, the best first: a week has five places to fill. */
const PER_THEME_AND_PART = 2;
/** Dressed foods a part gains at most, so that a month stays as quick to plan as it was without. */
const PER_PART = 24;
/** Motifs shared with a theme that make a full fit, as for plain foods. */
const FULL_FIT = 2;

/** What is known of tricks: the Larder's, what they were done on, and how long each rests. */
export type TrickGround = {
  readonly foods: readonly Food[];
  readonly tricks: readonly Trick[];
  readonly motifsOfTheme: ReadonlyMap<string, readonly string[]>;
  readonly shown: readonly ShownWeek[];
  readonly history: History;
  readonly trickRestDays: number;
};

/**
 * The problem with foods in a trick that brings them nearer to a theme, beside the plain foods. Of a food
 * and a theme only the best trick is offered; of those, the best few for each part. Whatever holds for
 * the plain food holds for the dressed one, and each trick rests as the series has it.
 */
export function withTricks(problem: PlanProblem, ground: TrickGround): PlanProblem {
  const dressed = chosenFor(problem, ground);
  const ofFood = groupBy(dressed, ({ foodId }) => foodId);
  const foodOf = new Map(problem.items.map(({ id, foodId }) => [id, foodId]));
  const widened = <Rule extends { readonly itemIds: readonly string[] }>(rule: Rule): Rule => ({
    ...rule,
    itemIds: rule.itemIds.flatMap((id) => [
      id,
      ...(ofFood.get(foodOf.get(id) ?? "") ?? []).map((item) => item.id),
    ]),
  });
  return {
    ...problem,
    items: [...problem.items, ...dressed],
    rests: [...problem.rests.map(widened), ...trickRests(dressed, ground)],
    forbidden: problem.forbidden.map(widened),
    owed: problem.owed.map(widened),
    quotas: problem.quotas.map(widened),
    wishes: problem.wishes.map(widened),
  };
}

type Offer = { readonly item: PlanItem; readonly themeId: string; readonly worth: number };

/** Part by part the most worthwhile dressed foods, every theme having its first before any its second. */
function chosenFor(problem: PlanProblem, ground: TrickGround): PlanItem[] {
  const offers = offersFor(problem, ground);
  return [...groupBy(offers, ({ item }) => item.part).values()].flatMap((ofPart) => {
    const byTheme = [...groupBy(ofPart, ({ themeId }) => themeId).values()].map((ofTheme) =>
      ofTheme.sort(byWorth).slice(0, PER_THEME_AND_PART),
    );
    const inTurn = Array.from({ length: PER_THEME_AND_PART }, (_, rank) =>
      byTheme.flatMap((ofTheme) => ofTheme[rank] ?? []).sort(byWorth),
    ).flat();
    const items = new Map(inTurn.map(({ item }) => [item.id, item]));
    return [...items.values()].slice(0, PER_PART);
  });
}

function byWorth(one: Offer, other: Offer): number {
  return other.worth - one.worth || (one.item.id < other.item.id ? -1 : 1);
}

/** For each food and each theme that may be on, the trick that gains most. */
function offersFor(problem: PlanProblem, ground: TrickGround): Offer[] {
  const foodOf = new Map<string, Food>(ground.foods.map((food) => [food.id, food]));
  const never = new Set(
    problem.forbidden.filter(({ on }) => on === null).flatMap(({ itemIds }) => itemIds),
  );
  const open = problem.themes.filter(({ notIn }) => notIn.length < problem.weeks.length);
  const worn = wornBefore(ground.shown);
  return problem.items.flatMap((item) => {
    const food = foodOf.get(item.foodId);
    // What must be cut small for a child is cut as the guidance says, not as a theme would like.
    if (!food || never.has(item.id) || guidanceFor(food)) return [];
    const able = ground.tricks
      .filter((trick) => canWear(food, trick, worn))
      .map((trick) => ({ trick, dressed: dress(item, food, trick, ground) }));
    return open.flatMap((theme) => {
      const plain = fitFor(item, theme.id);
      const gains = able
        .map(({ trick, dressed }) => ({
          item: dressed,
          themeId: theme.id,
          gain: fitFor(dressed, theme.id) - plain,
          minutes: trick.minutes,
        }))
        .filter(({ gain }) => gain > 0)
        .sort((one, other) => other.gain - one.gain || one.minutes - other.minutes);
      const [best] = gains;
      return best ? [{ ...best, worth: worthOf(best.item, theme.id) }] : [];
    });
  });
}

/** Rough points as the planner's own weights have them: fit, liking, and the morning's minutes. */
function worthOf(item: PlanItem, themeId: string): number {
  const liked = item.acceptance.reduce((sum, { mean }) => sum + mean, 0);
  const mean = liked / Math.max(1, item.acceptance.length);
  return 6 * fitFor(item, themeId) + 10 * mean - item.minutes / 2;
}

/**
 * A trick that needs something to slice goes on all that can be sliced; any other only on foods that the
 * records show it on. A garnish is a food of its own that nobody has checked: none is proposed.
 */
function canWear(food: Food, trick: Trick, worn: ReadonlySet<string>): boolean {
  if (trick.kind === "garnish") return false;
  if (trick.needsSliceable) return food.sliceable;
  return worn.has(`${trick.id} ${food.id}`);
}

function wornBefore(shown: readonly ShownWeek[]): ReadonlySet<string> {
  return new Set(
    shown.flatMap(({ items }) =>
      items.flatMap(({ trickIds, foodId }) => trickIds.map((id) => `${id} ${foodId}`)),
    ),
  );
}

function dress(item: PlanItem, food: Food, trick: Trick, ground: TrickGround): PlanItem {
  const motifs = new Set<string>([...food.motifs, ...trick.motifs]);
  const fits = [...ground.motifsOfTheme].map(([themeId, wanted]) => ({
    themeId,
    fit: Math.min(1, wanted.filter((motif) => motifs.has(motif)).length / FULL_FIT),
  }));
  return {
    ...item,
    id: `${item.id}+${trick.id}`,
    name: `${item.name}, ${trick.name}`,
    trickIds: [trick.id],
    minutes: item.minutes + trick.minutes,
    colours: [...new Set([...item.colours, ...trick.colours])],
    fits: fits.filter(({ fit }) => fit > 0),
    // Dressing takes a steady hand: on a rushed morning the plain food stands in.
    isOnHand: false,
  };
}

function fitFor(item: PlanItem, themeId: string): number {
  return item.fits.find((one) => one.themeId === themeId)?.fit ?? 0;
}

function trickRests(
  dressed: readonly PlanItem[],
  { tricks, history, trickRestDays }: TrickGround,
): RestGroup[] {
  const names = new Map<string, string>(tricks.map(({ id, name }) => [id, name]));
  return [...groupBy(dressed, ({ trickIds }) => trickIds[0] ?? "")].map(([id, items]) => ({
    id: `trick:${id}`,
    level: "trick",
    name: names.get(id) ?? id,
    restDays: Math.max(1, trickRestDays),
    itemIds: items.map((item) => item.id),
    shownOn: history.daysOf("trick", id),
  }));
}
