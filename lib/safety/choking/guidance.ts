import type { Food, Form } from "#lib/catalog/index.ts";
import type { SourceId } from "../source.ts";

/** What published guidance says about a shape of food under an age. */
export type ShapeGuidance = {
  readonly id: string;
  readonly forms: readonly Form[];
  /** Narrows the forms to some foods. */
  readonly speaksOf?: (food: Pick<Food, "group" | "form">) => boolean;
  /** It holds under this age in whole months. */
  readonly underMonths: number;
  readonly isNotServed: boolean;
  /** What to do, as a sentence begins it: "Cut in quarters lengthwise". */
  readonly todo: string;
  /** Tricks that do it. */
  readonly doneBy: readonly string[];
  readonly sources: readonly SourceId[];
};

const UNDER_4 = 48;
/** Sources that say "under 4", "4 to 5" and "5" meet here; the code follows the older, careful age. */
const UNDER_5 = 60;

const THIN = ["thin-matchsticks", "ribbons", "spiral"] as const;
const SMALL = ["dice", ...THIN] as const;
const isDairy = ({ group }: Pick<Food, "group">): boolean => group === "dairy";
const isVegetable = ({ group }: Pick<Food, "group">): boolean => group === "vegetable";

/**
 * The table, most particular first: the first row that speaks of a food is the one that counts. Round
 * fruit: halves first in the CACFP guide, quarters with the CDC, the AAP and Illinois Extension; the
 * code follows the quarters, the smaller piece.
 */
export const SHAPE_GUIDANCE: readonly ShapeGuidance[] = [
  {
    ...{ id: "round", forms: ["round-firm"], underMonths: UNDER_5, isNotServed: false },
    ...{ todo: "Cut in quarters, lengthwise", doneBy: ["quarters-lengthwise", "dice"] },
    sources: ["choking-extension", "choking-cacfp"],
  },
  {
    ...{ id: "cheese-stick", forms: ["cylinder", "chunk"], speaksOf: isDairy },
    ...{ underMonths: UNDER_4, isNotServed: false },
    ...{ todo: "Chop finely or cut in thin strips", doneBy: SMALL },
    sources: ["choking-cacfp", "choking-myplate", "choking-extension"],
  },
  {
    ...{ id: "sausage", forms: ["cylinder"], underMonths: UNDER_4, isNotServed: false },
    todo: "Quarter lengthwise, then small pieces; never coins",
    ...{ doneBy: ["quarters-lengthwise", "dice"], sources: ["choking-cacfp", "choking-blocks"] },
  },
  {
    ...{ id: "hard-vegetable", forms: ["hard-raw"], speaksOf: isVegetable },
    ...{ underMonths: UNDER_4, isNotServed: false },
    todo: "Cook until slightly soft, grate, or cut in thin matchsticks",
    ...{ doneBy: THIN, sources: ["choking-myplate"] },
  },
  {
    ...{ id: "hard-fruit", forms: ["hard-raw"], underMonths: UNDER_4, isNotServed: false },
    todo: "Chop finely, cut in thin strips, steam or grate",
    ...{ doneBy: SMALL, sources: ["choking-cacfp"] },
  },
  {
    ...{ id: "chunk", forms: ["chunk"], underMonths: UNDER_4, isNotServed: false },
    todo: "Cut in pieces of ½ inch (1.3 cm) at most; meat across the grain",
    ...{ doneBy: SMALL, sources: ["choking-icn", "choking-cacfp"] },
  },
  {
    ...{ id: "whole-nut", forms: ["whole-nut"], underMonths: UNDER_4, isNotServed: true },
    ...{ todo: "Do not serve whole; chop or grind finely", doneBy: [] },
    sources: ["choking-cacfp"],
  },
  {
    ...{ id: "butter", forms: ["spoon-butter"], underMonths: UNDER_4, isNotServed: false },
    todo: "Spread thinly, smooth only, never by the spoon",
    ...{ doneBy: [], sources: ["choking-cacfp", "choking-blocks"] },
  },
  {
    ...{ id: "popcorn", forms: ["popped"], underMonths: UNDER_5, isNotServed: true },
    ...{ todo: "Do not serve", doneBy: [], sources: ["choking-cacfp"] },
  },
  {
    ...{ id: "dried", forms: ["dried-sticky"], underMonths: UNDER_4, isNotServed: true },
    ...{ todo: "Cook into other food, or do not serve", doneBy: [], sources: ["choking-cacfp"] },
  },
  {
    ...{ id: "hard-sweet", forms: ["hard-sweet"], underMonths: UNDER_5, isNotServed: true },
    ...{ todo: "Do not serve", doneBy: [], sources: ["choking-blocks", "choking-myplate"] },
  },
  {
    ...{ id: "bone", forms: ["bone-in"], underMonths: UNDER_4, isNotServed: false },
    ...{ todo: "Take the bone out", doneBy: [], sources: ["choking-dese"] },
  },
];

/** What guidance speaks of a food's shape, whatever the age; undefined for none, such as kiwifruit. */
export function guidanceFor(food: Pick<Food, "group" | "form">): ShapeGuidance | undefined {
  return SHAPE_GUIDANCE.find(
    ({ forms, speaksOf }) => forms.includes(food.form) && (speaksOf?.(food) ?? true),
  );
}
