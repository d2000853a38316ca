import { addDays, day } from "#lib/calendar/index.ts";
import { DEFAULT_WEIGHTS, type PlanItem, type PlanProblem } from "#lib/planner/index.ts";

const MONDAY = day("2026-01-05");
const PARTS = ["main", "vegetable", "fruit"] as const;

/** A made-up week, planned once in a fresh worker so that the code is compiled when a user asks. */
export function warmUpProblem(): PlanProblem {
  const items = Array.from({ length: 60 }, (_, number): PlanItem => {
    const part = PARTS[number % PARTS.length] ?? "main";
    return {
      id: `item-${number}`,
      name: `Item ${number}`,
      foodId: `food-${number}`,
      familyId: `family-${number % 20}`,
      trickIds: [],
      part,
      acceptance: [{ mean: (number % 10) / 10, sd: 0.1 }],
      isNew: number % 7 === 0,
      costCents: 50 + number,
      minutes: number % 4,
      shopIds: [`shop-${number % 3}`],
      wasteCents: number % 5,
      colours: [`colour-${number % 6}`],
      fits: [{ themeId: `theme-${number % 2}`, fit: 1 }],
      daysUnseen: number,
      echo: (number % 5) / 1000,
      isOnHand: false,
    };
  });
  const ids = items.map(({ id }) => id);
  return {
    weeks: [
      {
        monday: MONDAY,
        days: [0, 1, 2, 3, 4].map((after) => ({ date: addDays(MONDAY, after), minutesMax: 9 })),
        budgetCents: 1500,
        lockedThemeId: null,
      },
    ],
    themes: [0, 1].map((number) => ({
      id: `theme-${number}`,
      name: `Theme ${number}`,
      restDays: 0,
      shownOn: [],
      echo: 0,
      notIn: [],
      bonus: [],
    })),
    parts: PARTS.map((part) => ({ part, min: 1, max: 2 })),
    items,
    children: [{ id: "child", name: "Child" }],
    shops: [0, 1, 2].map((number) => ({ id: `shop-${number}`, name: `Shop ${number}`, effort: 1 })),
    rests: ids.map((id) => ({
      id,
      level: "food",
      name: id,
      restDays: 3,
      itemIds: [id],
      shownOn: [],
    })),
    quotas: [
      {
        id: "some",
        name: "some",
        scope: "lunch",
        itemIds: ids.slice(9),
        min: 1,
        max: null,
        on: null,
      },
    ],
    forbidden: [],
    themesApart: [],
    owed: [{ id: "owed", name: "Owed", itemIds: ids.slice(0, 2), useBy: null, urgency: 1 }],
    locks: [],
    wishes: [],
    newFoods: { perLunchMax: 1, perWeekMax: 3, perWeekMin: 0 },
    weights: DEFAULT_WEIGHTS,
  };
}
