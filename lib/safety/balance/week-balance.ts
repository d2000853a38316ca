import { COLOURS, type Colour } from "#lib/catalog/index.ts";
import type { BoxItem, BoxLunch } from "../box.ts";
import type { SourceId } from "../source.ts";
import { amountWord } from "./amount-words.ts";
import { COMPONENTS, type Component } from "./credit-item.ts";
import { VEGETABLE_SUBGROUPS, type VegetableSubgroup } from "./crediting-kind.ts";
import { onPlate, PLATE_GROUPS } from "./plate.ts";
import { portionsIn } from "./portions.ts";
import type { BalanceScheme } from "./scheme.ts";
import { countAtSchool, countWeekAtSchool } from "./school-lunch.ts";
import { isSchoolGrade, SCHOOL_PATTERNS, type SchoolGrade } from "./school-pattern.ts";

/** A line of the week's table: what is counted, each lunch, the week, and what the scheme asks of it. */
export type BalanceRow = {
  readonly name: string;
  readonly unit: string;
  /** In the order of the lunches. */
  readonly days: readonly string[];
  readonly week: string;
  /** Least of a day and of a week; empty where the scheme asks for none. */
  readonly dayLeast: string;
  readonly weekLeast: string;
};

export type WeekBalance = {
  readonly rows: readonly BalanceRow[];
  /** Foods that count only by their recipe or their maker's statement. */
  readonly unread: readonly string[];
  /** Colours on the plate that week, and on how many of its days. */
  readonly colours: readonly { readonly colour: Colour; readonly days: number }[];
  readonly sources: readonly SourceId[];
};

const COMPONENT_NAMES: Readonly<Record<Component, string>> = {
  ...{ fruit: "Fruit", vegetable: "Vegetables", grain: "Grains" },
  ...{ meat: "Meats and alternates", milk: "Milk" },
};
const SUBGROUP_NAMES: Readonly<Record<VegetableSubgroup, string>> = {
  ...{ "dark-green": "dark green", "red-orange": "red and orange" },
  ...{ beans: "beans, peas, lentils", starchy: "starchy", other: "other vegetables" },
};

/** The name of a component or subgroup as the table and the notes have it. */
export function componentWord(component: Component): string {
  return COMPONENT_NAMES[component].toLowerCase();
}
/** The name of a subgroup of vegetables. */
export function subgroupWord(subgroup: VegetableSubgroup): string {
  return SUBGROUP_NAMES[subgroup];
}
/** "cup" or "oz eq". */
export function unitOf(component: Component): string {
  return component === "grain" || component === "meat" ? "oz eq" : "cup";
}

/** The week by a scheme, for a child of portion factor 1; null when none is chosen. */
export function balanceOfWeek(
  lunches: readonly BoxLunch[],
  scheme: BalanceScheme,
): WeekBalance | null {
  if (scheme === "off") return null;
  const boxes = lunches.map(({ items }) => items);
  const colours = coloursOf(boxes);
  if (isSchoolGrade(scheme)) return { ...schoolWeek(boxes, scheme), colours };
  return { ...(scheme === "plate" ? plateWeek(boxes) : portionWeek(boxes)), colours };
}

type Counted = Omit<WeekBalance, "colours">;

function schoolWeek(boxes: readonly (readonly BoxItem[])[], grade: SchoolGrade): Counted {
  const pattern = SCHOOL_PATTERNS[grade];
  const days = boxes.map(countAtSchool);
  const week = countWeekAtSchool(days);
  return {
    rows: COMPONENTS.flatMap((one) => [
      {
        ...{ name: COMPONENT_NAMES[one], unit: unitOf(one) },
        days: days.map(({ counts }) => amountWord(counts[one])),
        week: amountWord(week.counts[one]),
        ...{ dayLeast: amountWord(pattern.day[one]), weekLeast: amountWord(pattern.week[one]) },
      },
      // The subgroups stand below the vegetables they are part of.
      ...(one === "vegetable" ? VEGETABLE_SUBGROUPS : []).map((subgroup) => ({
        ...{ name: `of it ${SUBGROUP_NAMES[subgroup]}`, unit: "cup" },
        days: days.map(({ subgroups }) => amountWord(subgroups[subgroup])),
        week: amountWord(week.subgroups[subgroup]),
        ...{ dayLeast: "", weekLeast: amountWord(pattern.subgroups[subgroup]) },
      })),
    ]),
    unread: [...new Set(days.flatMap(({ unread }) => unread))],
    sources: ["balance-school", "balance-crediting"],
  };
}

function plateWeek(boxes: readonly (readonly BoxItem[])[]): Counted {
  const on = boxes.map((items) => items.flatMap(({ food, grams }) => onPlate(food, grams) ?? []));
  const sum = (group: string, held: (typeof on)[number]): number =>
    held.filter((one) => one.group === group).reduce((total, one) => total + one.amount, 0);
  return {
    rows: PLATE_GROUPS.map((group) => ({
      name: group.replace(/^./u, (letter) => letter.toUpperCase()),
      unit: group === "grains" || group === "protein" ? "oz eq" : "cup",
      days: on.map((held) => amountWord(sum(group, held))),
      week: amountWord(sum(group, on.flat())),
      ...{ dayLeast: "", weekLeast: "" },
    })),
    unread: [],
    sources: ["balance-plate", "balance-crediting"],
  };
}

function portionWeek(boxes: readonly (readonly BoxItem[])[]): Counted {
  const days = boxes.map(portionsIn);
  return {
    rows: [
      {
        ...{ name: "Fruit and vegetables", unit: "portion" },
        days: days.map(amountWord),
        week: amountWord(days.reduce((sum, one) => sum + one, 0)),
        ...{ dayLeast: "", weekLeast: "" },
      },
    ],
    unread: [],
    sources: ["balance-portions"],
  };
}

function coloursOf(boxes: readonly (readonly BoxItem[])[]): WeekBalance["colours"] {
  const days = boxes.map((items) => new Set(items.flatMap(({ food }) => food.colours)));
  return COLOURS.map((colour) => ({
    colour,
    days: days.filter((held) => held.has(colour)).length,
  })).filter((one) => one.days > 0);
}
