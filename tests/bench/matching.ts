import { matchFood, prepareFoods, suggestFoods } from "#lib/catalog/index.ts";
import { referenceFoods } from "#seed/index.ts";

/** What a keystroke costs on the reference catalogue, and against the same with ten times the foods. */
export function benchMatching(): { name: string; value: number; unit: string }[] {
  const foods = referenceFoods().map(({ food }) => food);
  const tenfold = Array.from({ length: 10 }, (_, copy) =>
    foods.map((food) => ({ ...food, name: copy === 0 ? food.name : `${food.name} ${copy}` })),
  ).flat();
  const typed = "chikcen nugets, warm";
  const cost = (list: readonly (typeof foods)[number][]): number => {
    prepareFoods(list);
    suggestFoods(typed, list);
    const started = performance.now();
    for (let length = 1; length <= typed.length; length += 1) {
      suggestFoods(typed.slice(0, length), list);
      matchFood(typed.slice(0, length), list);
    }
    return (performance.now() - started) / typed.length;
  };
  const [one, ten] = [cost(foods), cost(tenfold)];
  return [
    { name: "matching: one keystroke over the reference catalogue", value: one, unit: "ms" },
    { name: "matching: ten times the foods (10 is linear)", value: ten / one, unit: "times" },
  ];
}
