import { describeQuantity } from "../quantity/describe-quantity.ts";
import { readQuantity } from "../quantity/read-quantity.ts";

/** The ingredients of a house recipe, and what it makes. */
export type Ingredients = {
  /** One a line, the amount first: "½ tsp salt". */
  readonly lines: readonly string[];
  /** "16 flatbreads", "4 servings"; null where nobody said. */
  readonly makes: string | null;
};

const MAKES = /^(makes|yields?|serves|gives|for)\b[:\s]+(.*\d.*)$/iu;

/**
 * Reads ingredients typed one a line. A line that begins with "makes", "serves" or "yields" and holds
 * a number says what comes of it; every other is an ingredient, its amount written the way amounts are.
 */
export function readIngredients(text: string): Ingredients {
  const lines = text
    .split("\n")
    .map((line) => line.replace(/^\s*[-•*]\s+/u, "").trim())
    .filter((line) => line !== "");
  const isMakes = (line: string): boolean => MAKES.test(line);
  const makes = lines.find(isMakes);
  return {
    lines: lines.filter((line) => !isMakes(line)).map(ingredientLine),
    makes: makes === undefined ? null : madeOf(makes),
  };
}

/** What cannot be read as an amount and a name stays as it was typed. */
function ingredientLine(line: string): string {
  const { quantity, rest, isApproximate } = readQuantity(line);
  if (quantity === null || quantity.amount <= 0 || rest === "") return line;
  const about = isApproximate && quantity.amountMax === null ? "about " : "";
  return `${about}${describeQuantity(quantity)} ${rest}`;
}

function madeOf(line: string): string | null {
  const [, verb = "", what = ""] = MAKES.exec(line) ?? [];
  const amount = what.replace(/\.$/u, "").trim();
  const isBare = /^(?:about )?\d+(?:\s*(?:-|–|to)\s*\d+)?$/u.test(amount);
  if (isBare) return `${amount} ${amount === "1" ? "serving" : "servings"}`;
  return /^serves|^for/iu.test(verb) && /^(?:about )?\d+ (?:people|children)$/u.test(amount)
    ? amount.replace(/people|children/u, "servings")
    : amount;
}
