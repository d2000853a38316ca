import type { Food, TrickId } from "../food.ts";
import { matchFood, type FoodMatch, type RankedFood } from "../match/match-food.ts";
import { likelyPart } from "../part/likely-part.ts";
import { countUnitOf, EACH, SERVING } from "../quantity/count-units.ts";
import { gramsOf, type WeighProblem } from "../quantity/grams-of.ts";
import { readQuantity, type Quantity, type ReadQuantity } from "../quantity/read-quantity.ts";
import { weightOfCounted } from "../quantity/unit-weights.ts";
import type { Part } from "../vocabulary.ts";
import { findTricks, isInName, type NamedTrick } from "./find-tricks.ts";
import { splitLine } from "./split-line.ts";

/** As much of a food as the quick line needs. */
export type QuickFood = Pick<
  Food,
  "id" | "name" | "aliases" | "parts" | "servingGrams" | "gramsPerCup" | "unitWeights" | "countUnit"
>;

/** What the user should look at before an item is taken. */
export type QuickDoubt =
  | { readonly kind: "no-food" }
  | { readonly kind: "spelling"; readonly matched: string }
  | { readonly kind: "several-foods"; readonly others: readonly string[] }
  | { readonly kind: "no-amount" }
  | { readonly kind: "about" }
  | { readonly kind: "range" }
  | { readonly kind: "not-weighed"; readonly problem: WeighProblem };

/** One item of a typed lunch, to be confirmed. */
export type QuickItem<F extends QuickFood> = {
  /** As typed. */
  readonly text: string;
  /** What of it is its name: no amount, no "each", no trick. A corrected match teaches it. */
  readonly phrase: string;
  readonly food: RankedFood<F> | null;
  /** Other foods it may be, the likeliest first. */
  readonly others: readonly RankedFood<F>[];
  /** One serving when no amount was typed. */
  readonly quantity: Quantity;
  /** Grams of the amount, null when they cannot be told. */
  readonly grams: number | null;
  /** "each" or "per child" was typed. */
  readonly isPerChild: boolean;
  readonly part: Part | null;
  readonly trickIds: readonly TrickId[];
  readonly doubts: readonly QuickDoubt[];
};

const PER_CHILD = /,?\s*\b(?:each|apiece|per (?:child|kid|box|lunch)|for each(?: child)?)\b/i;
const ONE_SERVING: Quantity = { amount: 1, amountMax: null, unit: SERVING };
/** Another food this close to the best is worth asking about. */
const CLOSE_SCORE = 0.04;

/**
 * Reads a whole lunch typed as one line, "oat squares; ¼ cup hummus + cucumber ribbons; 1 clementine
 * each; water", into items to confirm. Never throws; what it does not know it says in `doubts`.
 */
export function parseQuickLine<F extends QuickFood>(
  line: string,
  foods: readonly F[],
  tricks: readonly NamedTrick[] = [],
): QuickItem<F>[] {
  const namingScore = (text: string): number => matchFood(text, foods).best?.score ?? 0;
  const taken: Part[] = [];
  return splitLine(line, namingScore).map((text) => {
    const item = readItem(text, foods, tricks, taken);
    if (item.part) taken.push(item.part);
    return item;
  });
}

function readItem<F extends QuickFood>(
  text: string,
  foods: readonly F[],
  tricks: readonly NamedTrick[],
  taken: readonly Part[],
): QuickItem<F> {
  const read = readNamed(text.replace(PER_CHILD, ""));
  const found = findTricks(read.rest, tricks);
  const { best, ranked, doubtful } = firstNamed([found.rest, found.bare, read.rest], foods);
  const quantity = countedByName(read, best?.food) ?? ONE_SERVING;
  const weighed = best ? gramsOf(best.food, quantity) : null;
  const others = [...ranked.slice(1), ...doubtful];
  const close = best ? ranked.slice(1).filter(({ score }) => best.score - score < CLOSE_SCORE) : [];
  const doubts: (QuickDoubt | false)[] = [
    !best && { kind: "no-food" },
    best?.reason.kind === "spelling" && { kind: "spelling", matched: best.reason.matched },
    close.length > 0 && { kind: "several-foods", others: close.map(({ food }) => food.name) },
    read.quantity === null && { kind: "no-amount" },
    read.isApproximate && quantity.amountMax === null && { kind: "about" },
    quantity.amountMax !== null && { kind: "range" },
    weighed !== null && !weighed.ok && { kind: "not-weighed", problem: weighed.problem },
  ];
  return {
    text,
    phrase: found.bare || found.rest,
    food: best,
    others,
    quantity,
    grams: weighed?.ok ? weighed.value : null,
    isPerChild: PER_CHILD.test(text),
    part: (best && likelyPart(best.food, taken)) ?? null,
    trickIds: found.tricks
      .filter((trick) => !best || !isInName(trick, best.food))
      .map(({ id }) => id),
    doubts: doubts.filter((doubt) => doubt !== false),
  };
}

/** The first of some texts that names a food, else what the first of them may mean. */
function firstNamed<F extends QuickFood>(
  texts: readonly string[],
  foods: readonly F[],
): FoodMatch<F> {
  const matches = texts.map((text) => matchFood(text, foods));
  return matches.find(({ best }) => best !== null) ?? matches[0] ?? matchFood("", foods);
}

/** "2 rolls" leaves no name behind its unit: then the unit is the name. */
function readNamed(text: string): ReadQuantity {
  const read = readQuantity(text);
  if (read.rest !== "" || !read.quantity) return read;
  const { unit } = read.quantity;
  return { ...read, quantity: { ...read.quantity, unit: EACH }, rest: unit === EACH ? text : unit };
}

/** "10 cucumber slices" counts slices, where the food knows what one weighs. */
function countedByName(read: ReadQuantity, food: QuickFood | undefined): Quantity | null {
  if (!read.quantity || read.quantity.unit !== EACH || !food) return read.quantity;
  const unit = countUnitOf(read.rest.split(/\s+/).at(-1) ?? "");
  if (!unit || weightOfCounted(food.unitWeights, unit) === undefined) return read.quantity;
  return { ...read.quantity, unit };
}
