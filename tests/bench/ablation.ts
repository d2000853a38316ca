import { day } from "#lib/calendar/index.ts";
import {
  ablateMonth,
  ECHO,
  meanOf,
  REFUSED,
  SPOILED,
  WAYS,
  type PlanFigures,
  type Way,
} from "./ablation-month.ts";

type Figure = { name: string; value: number; unit: string };
type Month = ReadonlyMap<Way, PlanFigures>;

/** On these days' demos, and on those of the two years before, the planner's weights were tuned. */
const TUNED = ["2025-11-12", "2026-03-11", "2026-04-08", "2026-07-08"].map((on) => day(on));
/** Reported only; but looked at between two rounds of tuning. */
const HELD_OUT = [
  ...["2025-10-08", "2025-12-10", "2026-01-07", "2026-02-11"],
  ...["2026-05-13", "2026-06-10", "2026-08-12", "2026-09-09"],
].map((on) => day(on));
/** Looked at only when the last weight, that of the theme, was chosen between 7, 9 and 14. */
const UNTOUCHED = [
  "2026-10-14",
  "2026-12-09",
  "2027-02-10",
  "2027-04-14",
  "2027-06-09",
  "2027-08-11",
].map((on) => day(on));
const RIVALS = WAYS.filter((way) => way !== "solver");

/**
 * Twelve months of a year and six of the next, each the first open one of the demo as somebody meets it
 * that day with a year behind it, planned three ways: each aim, the broken rules, and what is true of the
 * plan. Months that the weights were tuned on are told apart; only the others say what planning gains.
 * Means over months, and in how many the solver's plan has less echo, waste and refusals.
 */
export async function benchAblation(): Promise<Figure[]> {
  const groups = [
    { words: "held-out months", days: HELD_OUT },
    { words: "untouched months", days: UNTOUCHED },
    { words: "months tuned on", days: TUNED },
  ];
  const figures: Figure[] = [];
  for (const { words, days } of groups) {
    const months: Month[] = [];
    for (const today of days) months.push(await ablateMonth(today));
    figures.push(...means(words, months), ...countsLower(words, months));
  }
  return figures;
}

function means(words: string, months: readonly Month[]): Figure[] {
  return WAYS.flatMap((way) => {
    const ofWay = months.flatMap((month) => month.get(way) ?? []);
    return [...(ofWay[0] ?? [])].map(([name, { unit }]) => ({
      name: `${words}, ${way}, ${name}`,
      value: meanOf(ofWay.map((figures) => figures.get(name)?.value ?? 0)),
      unit,
    }));
  });
}

function countsLower(words: string, months: readonly Month[]): Figure[] {
  return RIVALS.flatMap((rival) =>
    [ECHO, SPOILED, REFUSED].map((name) => {
      const valueOf = (month: Month, way: Way): number =>
        month.get(way)?.get(name)?.value ?? Infinity;
      const lower = months.filter((month) => valueOf(month, "solver") < valueOf(month, rival));
      return {
        name: `${words}, lower than ${rival}, ${name}`,
        value: lower.length,
        unit: `of ${months.length} months`,
      };
    }),
  );
}
