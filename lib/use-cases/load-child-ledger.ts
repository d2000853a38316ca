import type { Day } from "#lib/calendar/index.ts";
import { keepUntilWritten, readChildren } from "#lib/db/index.ts";
import {
  byStanding,
  describeStanding,
  describeTastings,
  listTryAgain,
  type Acceptance,
  type Standing,
  type StandingKind,
} from "#lib/reactions/index.ts";
import type { Context } from "./context.ts";
import { loadEstimates } from "./load-estimates.ts";
import { readNames } from "./read-names.ts";

/** A food and where one child stands with it. */
export type FoodStanding = {
  readonly foodId: string;
  readonly food: string;
  readonly standing: Standing;
  /** Expected share eaten and the ends of its 80 % interval, 0–1. */
  readonly estimate: number;
  readonly low: number;
  readonly high: number;
  readonly offers: number;
  readonly tastings: number;
  readonly lastDay: Day;
  /** Why it stands where it stands. */
  readonly why: string;
};

export type ChildLedger = {
  readonly id: string;
  readonly name: string;
  /** In the order of what to do about them. */
  readonly groups: readonly {
    readonly kind: StandingKind;
    readonly foods: readonly FoodStanding[];
  }[];
  readonly tryAgain: readonly {
    readonly foodId: string;
    readonly food: string;
    readonly why: string;
    /** At the number of offers where most carers stop. */
    readonly isAtStoppingPoint: boolean;
    readonly lastDay: Day;
  }[];
};

const ORDER: readonly StandingKind[] = ["dependable", "mixed", "meeting", "resting"];
const TRY_AGAIN_MOST = 12;

/** Every food one child has met, by standing, and what to try again; undefined when there is no such child. */
export function loadChildLedger(
  { db, today }: Context,
  childId: string,
): Promise<ChildLedger | undefined> {
  return keepUntilWritten(db, `ledger child ${childId} ${today}`, async () => {
    const [learned, children, names] = await Promise.all([
      loadEstimates({ db, today }),
      readChildren(db),
      readNames(db),
    ]);
    const child = children.find(({ id }) => id === childId);
    if (!child) return undefined;
    const name = child.onScreenName;
    const view = (acceptance: Acceptance): FoodStanding[] => {
      const { foodId, standing, estimate, low, high, history } = acceptance;
      if (!history) return [];
      const { offers, tastings, lastDay } = history;
      const food = names.food(foodId);
      const why = describeStanding(acceptance, { child: name, food }, today);
      return [{ foodId, food, standing, estimate, low, high, offers, tastings, lastDay, why }];
    };
    const groups = byStanding(learned.met, childId);
    return {
      id: childId,
      name,
      groups: ORDER.map((kind) => ({ kind, foods: (groups.get(kind) ?? []).flatMap(view) })),
      tryAgain: listTryAgain(
        learned.met.filter((one) => one.childId === childId),
        today,
      )
        .slice(0, TRY_AGAIN_MOST)
        .flatMap(({ acceptance, isAtStoppingPoint }) => {
          const { foodId, history } = acceptance;
          if (!history) return [];
          const why = describeTastings(history.tastings);
          return [
            { foodId, food: names.food(foodId), why, isAtStoppingPoint, lastDay: history.lastDay },
          ];
        }),
    };
  });
}
