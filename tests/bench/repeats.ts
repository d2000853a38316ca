import { randomFrom } from "#lib/base/index.ts";
import { addDays, day, weeksLater } from "#lib/calendar/index.ts";
import {
  checkRest,
  closestWeeks,
  DEFAULT_REST_DAYS,
  historyOf,
  type ShownWeek,
} from "#lib/repeats/index.ts";

/** A series of made-up weeks: five lunches of seven items, by a fixed seed. */
function madeSeries(weeks: number): ShownWeek[] {
  const random = randomFrom("repeats bench");
  return Array.from({ length: weeks }, (_, number): ShownWeek => {
    const week = weeksLater(day("2016-01-04"), number);
    const items = Array.from({ length: 35 }, (__, index) => {
      const food = random.below(400);
      return {
        on: addDays(week, index % 5),
        foodId: `food-${food}`,
        familyId: `family-${food % 120}`,
        productId: null,
        trickIds: random.below(3) === 0 ? [`trick-${random.below(60)}`] : [],
        isStaple: food === 0,
      };
    });
    return {
      week,
      themeId: `theme-${random.below(150)}`,
      motifs: [`motif-${random.below(40)}`],
      items,
    };
  });
}

/** How the cost of rest checks and echoes grows from one year of weeks to ten. */
export function benchRepeats(): { name: string; value: number; unit: string }[] {
  const cost = (weeks: number): number => {
    const series = madeSeries(weeks);
    const last = series.at(-1);
    if (!last) return 0;
    const started = performance.now();
    for (let round = 0; round < 5; round += 1) {
      const history = historyOf(series);
      checkRest(last, history, { days: DEFAULT_REST_DAYS, own: new Map() });
      closestWeeks(last, series.slice(0, -1), 3);
    }
    return (performance.now() - started) / 5;
  };
  cost(52);
  const [year, decade] = [cost(52), cost(520)];
  return [
    { name: "repeats: index, check and compare ten years", value: decade, unit: "ms" },
    { name: "repeats: ten years against one (10 is linear)", value: decade / year, unit: "times" },
  ];
}
