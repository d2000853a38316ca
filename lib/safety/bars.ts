import { groupBy } from "#lib/base/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";
import type { BoxChild, BoxItem, BoxLunch } from "./box.ts";
import type { Avoidance } from "./child.ts";
import { guidanceFor } from "./choking/guidance.ts";
import { checkTemperature, type Journey } from "./heat/check-temperature.ts";
import { hardFilter } from "./is-allowed.ts";
import { ruleHolds, type SchoolRule } from "./school-rule.ts";

/** A reason to keep some foods out of the plan on some days. */
export type Bar = {
  readonly id: string;
  readonly kind: "allergen" | "avoidance" | "school" | "choking" | "temperature" | "unavailable";
  /** In words: "Pepper avoids sesame". */
  readonly name: string;
  readonly keepsOut: (food: Food) => boolean;
  /** Days of those asked for on which it holds; never empty. */
  readonly on: readonly Day[];
};

/** What bars are read from. */
export type BarGround = {
  readonly children: readonly (Pick<BoxChild, "id" | "name" | "portionFactor"> & {
    readonly avoidances: readonly {
      readonly id: string;
      readonly avoidance: Avoidance;
      readonly what: string;
    }[];
    readonly ageMonthsOn: (day: Day) => number | null;
  })[];
  readonly rules: readonly { readonly id: string; readonly rule: SchoolRule }[];
  readonly recalledFoodIds: ReadonlySet<string>;
  /** How lunch travels; null: not said, so that no food is kept out for what is only assumed. */
  readonly journey: Journey | null;
  readonly outsideOn: (day: Day) => BoxLunch["outside"];
};

/**
 * Everything that keeps foods out of a plan, one bar a reason, so that a planner can name each. The reading
 * is the checks' own: an avoidance but a dislike, a rule of the school, what guidance says not to serve
 * under a child's age, what the model finds out of temperature too long, and what is recalled.
 */
export function barsFor(ground: BarGround, days: readonly Day[]): Bar[] {
  const [anyDay] = days;
  if (anyDay === undefined) return [];
  return [
    ...avoidanceBars(ground, days, anyDay),
    ...ground.rules.flatMap(({ id, rule }): Bar[] => {
      const on = days.filter((day) => ruleHolds(rule, day));
      const [first] = on;
      if (first === undefined) return [];
      const isAllowed = hardFilter([], [rule], first);
      return [{ id, kind: "school", name: rule.name, keepsOut: (food) => !isAllowed(food), on }];
    }),
    ...chokingBars(ground, days),
    ...temperatureBars(ground, days),
    {
      ...{ id: "recalled", kind: "unavailable", name: "marked as recalled or suspect" },
      keepsOut: (food) => ground.recalledFoodIds.has(food.id),
      on: days,
    },
  ];
}

/** An avoidance holds on every day alike, so any day does for asking. */
function avoidanceBars({ children }: BarGround, on: readonly Day[], anyDay: Day): Bar[] {
  return children.flatMap((child) =>
    child.avoidances.map(({ id, avoidance, what }) => {
      const isAllowed = hardFilter([{ ...child, avoidances: [avoidance] }], [], anyDay);
      return {
        ...{ id, kind: "allergen" in avoidance ? ("allergen" as const) : ("avoidance" as const) },
        name: `${child.name} avoids ${what}`,
        keepsOut: (food) => !isAllowed(food),
        on,
      };
    }),
  );
}

/** What guidance says not to serve at all under an age; what can be cut is left to the checks. */
function chokingBars({ children }: BarGround, days: readonly Day[]): Bar[] {
  return children.flatMap((child) => {
    const byLimit = groupBy(
      [48, 60].flatMap((months) =>
        days
          .filter((day) => (child.ageMonthsOn(day) ?? Infinity) < months)
          .map((day) => ({ months, day })),
      ),
      ({ months }) => months,
    );
    return [...byLimit].map(([months, held]): Bar => ({
      ...{ id: `choking:${child.id}:${months}`, kind: "choking" },
      name: `not served under ${months / 12}, and ${child.name} is younger`,
      keepsOut: (food) => {
        const guidance = guidanceFor(food);
        return guidance?.isNotServed === true && guidance.underMonths === months;
      },
      on: held.map(({ day }) => day),
    }));
  });
}

function temperatureBars({ children, journey, outsideOn }: BarGround, days: readonly Day[]): Bar[] {
  if (journey === null) return [];
  const eaters = children.map((child) => ({ ...child, avoidances: [], ageMonths: null }));
  return [...groupBy(days, (day) => String(outsideOn(day)?.celsius))].flatMap(([warmth, on]) => {
    const [first] = on;
    if (first === undefined) return [];
    const outside = outsideOn(first);
    return [
      {
        ...{ id: `temperature:${warmth}`, kind: "temperature" as const },
        name: "too long between cold and hot until lunch, as it is carried",
        keepsOut: (food: Food) =>
          checkTemperature(
            { id: food.id, date: first, items: [alone(food)], outside },
            eaters,
            journey,
          ).some(({ level }) => level === "look"),
        on,
      },
    ];
  });
}

function alone(food: Food): BoxItem {
  return {
    ...{ id: food.id, food, part: food.parts[0] ?? "extra", grams: food.servingGrams },
    ...{ trickIds: [], notFor: [], product: null, recall: null, maybeRecalled: null },
  };
}
