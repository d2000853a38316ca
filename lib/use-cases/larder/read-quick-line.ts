import {
  describeDoubt,
  parseQuickLine,
  type Food,
  type QuickItem,
  type Trick,
} from "#lib/catalog/index.ts";
import { readTricks } from "#lib/db/index.ts";
import type { Context } from "../context.ts";
import { readNamedFoods } from "./named-foods.ts";
import type { QuickLineInput } from "./quick-line.input.ts";

type Option = {
  readonly id: string;
  readonly name: string;
  readonly part: string;
};

/** One item of a typed lunch as it is shown for confirmation. */
export type QuickProposal = {
  readonly text: string;
  /** What of it is a name; a corrected match teaches it. */
  readonly phrase: string;
  /** The food it was read as, then others it may be; empty when none is known. */
  readonly foods: readonly Option[];
  /** True when the first of `foods` is sure enough to be taken unless the user says otherwise. */
  readonly isKnown: boolean;
  readonly part: string;
  /** For a child of portion factor 1. */
  readonly amount: number;
  readonly unit: string;
  readonly tricks: readonly { readonly id: string; readonly name: string }[];
  readonly doubts: readonly string[];
};

const OTHERS_SHOWN = 5;

/** Reads a lunch typed as one line into items to confirm; nothing is written. */
export async function readQuickLine(
  { db }: Context,
  { line }: QuickLineInput,
): Promise<QuickProposal[]> {
  const [foods, tricks] = await Promise.all([readNamedFoods(db), readTricks(db)]);
  return parseQuickLine(line, foods, tricks).map((item) => proposalOf(item, tricks));
}

function proposalOf(item: QuickItem<Food>, tricks: readonly Trick[]): QuickProposal {
  const { food, others, quantity, part } = item;
  const ranked = [...(food ? [food] : []), ...others].map((one) => one.food);
  const amount =
    quantity.amountMax === null ? quantity.amount : (quantity.amount + quantity.amountMax) / 2;
  const named = tricks.filter(({ id }) => item.trickIds.includes(id));
  const cannot = named.filter((trick) => trick.needsSliceable && food?.food.sliceable === false);
  return {
    ...{ text: item.text, phrase: item.phrase },
    foods: [...new Map(ranked.map((one) => [one.id, one])).values()]
      .slice(0, 1 + OTHERS_SHOWN)
      .map((one) => ({ id: one.id, name: one.name, part: one.parts[0] ?? "extra" })),
    isKnown: food !== null,
    part: part ?? "extra",
    ...{ amount, unit: quantity.unit },
    tricks: named.map(({ id, name }) => ({ id, name })),
    doubts: [
      ...item.doubts.map(describeDoubt),
      ...cannot.map(({ name }) => `On record it cannot be sliced, so “${name}” may not work.`),
    ],
  };
}
