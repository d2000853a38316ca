import type { BoxLunch } from "../box.ts";
import type { Finding } from "../finding.ts";
import { listOf } from "../words.ts";
import { amountWord } from "./amount-words.ts";
import { COMPONENTS } from "./credit-item.ts";
import { VEGETABLE_SUBGROUPS } from "./crediting-kind.ts";
import { onPlate, PLATE_GROUPS } from "./plate.ts";
import { schemeWord, type BalanceScheme } from "./scheme.ts";
import { countAtSchool, countWeekAtSchool } from "./school-lunch.ts";
import { isSchoolGrade, SCHOOL_PATTERNS, type SchoolGrade } from "./school-pattern.ts";
import { componentWord, subgroupWord, unitOf } from "./week-balance.ts";

/** One quiet note at most on what a lunch counts for; guidance, never a grade. An empty lunch gets none. */
export function checkBalance(lunch: BoxLunch, scheme: BalanceScheme): readonly Finding[] {
  if (lunch.items.length === 0) return [];
  if (isSchoolGrade(scheme)) return schoolNote(lunch, scheme);
  return scheme === "plate" ? plateNote(lunch) : [];
}

/** One note on what the week lacks of the school pattern's vegetables and sums; only for a full week. */
export function checkWeekBalance(
  lunches: readonly BoxLunch[],
  scheme: BalanceScheme,
): readonly Finding[] {
  if (!isSchoolGrade(scheme) || lunches.length < FULL_WEEK) return [];
  if (lunches.some(({ items }) => items.length === 0)) return [];
  const pattern = SCHOOL_PATTERNS[scheme];
  const week = countWeekAtSchool(lunches.map(({ items }) => countAtSchool(items)));
  const lacking = VEGETABLE_SUBGROUPS.filter(
    (one) => week.subgroups[one] < pattern.subgroups[one],
  ).map((one) => `${subgroupWord(one)} (${ofCups(week.subgroups[one], pattern.subgroups[one])})`);
  if (lacking.length === 0) return [];
  return [
    {
      ...NOTE,
      key: `balance:week:${scheme}`,
      sentence: `By the ${schemeWord(scheme)}, the week counts little of these vegetables: ${listOf(lacking)}.`,
      sources: ["balance-school", "balance-crediting"],
      itemIds: [],
    },
  ];
}

/** The weekly amounts are those of five days. */
const FULL_WEEK = 5;
const NOTE = { kind: "balance", level: "note", remedy: "", mayKeep: true } as const;

function schoolNote({ items }: BoxLunch, grade: SchoolGrade): Finding[] {
  const { day } = SCHOOL_PATTERNS[grade];
  const { counts, unread } = countAtSchool(items);
  const lacking = COMPONENTS.filter((one) => counts[one] < day[one]).map(
    (one) =>
      `${componentWord(one)} ${amountWord(counts[one])} of ${amountWord(day[one])} ${unitOf(one)}`,
  );
  if (lacking.length === 0) return [];
  const left = unread.length === 0 ? "" : ` Not counted without a recipe: ${listOf(unread)}.`;
  return [
    {
      ...NOTE,
      key: `balance:lunch:${grade}`,
      sentence: `By the ${schemeWord(grade)}: ${listOf(lacking)}.${left}`,
      sources: ["balance-school", "balance-crediting"],
      itemIds: [],
    },
  ];
}

function plateNote({ items }: BoxLunch): Finding[] {
  const held = new Set(items.map(({ food, grams }) => onPlate(food, grams)?.group));
  const lacking = PLATE_GROUPS.filter((group) => !held.has(group));
  if (lacking.length === 0) return [];
  return [
    {
      ...NOTE,
      key: "balance:lunch:plate",
      sentence: `Of the plate’s five groups this lunch has ${PLATE_GROUPS.length - lacking.length}; not in it: ${listOf(lacking)}.`,
      sources: ["balance-plate"],
      itemIds: [],
    },
  ];
}

function ofCups(count: number, least: number): string {
  return `${amountWord(count)} of ${amountWord(least)} cup`;
}
