import { keepUntilWritten, readChildren, readFoodsById } from "#lib/db/index.ts";
import { describeStanding, pathOf, type Acceptance, type PathPoint } from "#lib/reactions/index.ts";
import type { Colour, Pattern } from "#lib/catalog/index.ts";
import type { Context } from "./context.ts";
import { loadEstimates } from "./load-estimates.ts";

/** The path of one food with one child. */
export type ChildPath = {
  readonly childId: string;
  readonly child: string;
  readonly acceptance: Acceptance;
  readonly why: string;
  /** Oldest first. */
  readonly points: readonly PathPoint[];
};

export type FoodLedger = {
  readonly foodId: string;
  readonly food: string;
  readonly colour: Colour;
  readonly pattern: Pattern;
  readonly paths: readonly ChildPath[];
};

/** How one food went with each child, tasting by tasting; undefined when there is no such food. */
export function loadFoodLedger(
  { db, today }: Context,
  foodId: string,
): Promise<FoodLedger | undefined> {
  return keepUntilWritten(db, `ledger food ${foodId} ${today}`, async () => {
    const [learned, children, foods] = await Promise.all([
      loadEstimates({ db, today }),
      readChildren(db),
      readFoodsById(db, [foodId]),
    ]);
    const food = foods.get(foodId);
    if (!food) return undefined;
    const paths = children
      .filter(({ isRetired }) => !isRetired)
      .map(({ id, onScreenName: child }) => {
        const acceptance = learned.of(id, foodId, food.family);
        return {
          ...{ childId: id, child, acceptance },
          why: describeStanding(acceptance, { child, food: food.name }, today),
          points: pathOf(learned, id, foodId),
        };
      });
    return {
      ...{ foodId, food: food.name, paths },
      colour: food.colours[0] ?? "cream",
      pattern: food.pattern,
    };
  });
}
