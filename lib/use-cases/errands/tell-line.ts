import {
  arithmeticOf,
  describeArithmetic,
  type Need,
  type RunLine,
  type RunPlan,
} from "#lib/shopping/index.ts";

/** How a line came about, in one line of words. */
export function tellLine(needs: readonly Need[], plan: RunPlan, line: RunLine): string {
  const [foodId, productId] = line.itemId.split("/");
  const own = needs.filter(
    (need) =>
      need.foodId === foodId &&
      (productId === undefined || need.productId === null || need.productId === productId),
  );
  const arithmetic = arithmeticOf(line, own, plan.fromStock);
  if (!arithmetic) return "";
  const words = describeArithmetic(arithmetic);
  return arithmetic.portions.length === 0 ? `To keep the level: ${words}` : words;
}
