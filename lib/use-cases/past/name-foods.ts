import { matchFood, readQuantity, type Food, type MatchReason } from "#lib/catalog/index.ts";
import { LEAVE_OUT, NEW_FOOD, type PastInput } from "./past.input.ts";

/** What a phrase of the file is taken for. */
type Named =
  | { readonly kind: "food"; readonly food: Food; readonly by: MatchReason | "chosen" }
  | { readonly kind: "new" | "left-out" | "unknown" };

/** A phrase of the file, what it is taken for and what else it may be. */
export type NamedPhrase = {
  readonly phrase: string;
  readonly named: Named;
  /** Other foods it may be, best first. */
  readonly others: readonly Food[];
};

const OTHERS_MOST = 5;

/** Says which food each phrase means, each looked up once; what the user chose stands above a match. */
export function foodNamer(
  foods: readonly Food[],
  choices: PastInput["choices"],
): (phrase: string) => NamedPhrase {
  const byId = new Map<string, Food>(foods.map((food) => [food.id, food]));
  const byName = new Map<string, Food>(foods.map((food) => [food.name.toLowerCase(), food]));
  const known = new Map<string, NamedPhrase>();
  return (phrase) => {
    const before = known.get(phrase);
    if (before) return before;
    const found = matchFood(phrase, foods);
    const all = [...found.ranked, ...found.doubtful].map(({ food }) => food);
    const choice = choices[phrase];
    const own = choice === NEW_FOOD ? byName.get(bareName(phrase).toLowerCase()) : undefined;
    // A food that was added from this file before is that food, not another one.
    const added: Named = own ? { kind: "food", food: own, by: { kind: "name" } } : { kind: "new" };
    const chosen = choice === NEW_FOOD ? added : chosenFor(choice, byId);
    const matched: Named = found.best
      ? { kind: "food", food: found.best.food, by: found.best.reason }
      : { kind: "unknown" };
    const named = chosen ?? matched;
    const others = all
      .filter((food) => named.kind !== "food" || food.id !== named.food.id)
      .slice(0, OTHERS_MOST);
    const answer = { phrase, named, others };
    known.set(phrase, answer);
    return answer;
  };
}

function chosenFor(choice: string | undefined, byId: ReadonlyMap<string, Food>): Named | undefined {
  if (choice === undefined || choice === "") return undefined;
  if (choice === LEAVE_OUT) return { kind: "left-out" };
  const food = byId.get(choice);
  return food && { kind: "food", food, by: "chosen" };
}

/** The name of a food of the file's own: the phrase without its amount. */
export function bareName(phrase: string): string {
  const rest = readQuantity(phrase).rest.trim();
  return (rest === "" ? phrase : rest).slice(0, 120);
}
