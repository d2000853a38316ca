import {
  mediumDay,
  monthName,
  MONTHS,
  monthTitle,
  partsOf,
  type Day,
} from "#lib/calendar/index.ts";
import type { Standing } from "#lib/reactions/index.ts";

/** "71 %" */
export function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

/** "+6 points", "−3 points": a difference of shares. */
export function points(difference: number): string {
  const rounded = Math.round(difference * 100);
  const sign = rounded > 0 ? "+" : rounded < 0 ? "−" : "±";
  return `${sign}${Math.abs(rounded)}`;
}

/** "€12.40": cents in the user's money. */
export function money(cents: number, currency: string): string {
  return `${currency}${(cents / 100).toFixed(2)}`;
}

/** What a week, a month or a quarter is called by the day it begins on. */
export function periodName(on: Day, bin: "week" | "month" | "quarter"): string {
  const [year, month] = partsOf(on);
  if (bin === "week") return `${mediumDay(on)} ${year}`;
  return bin === "month" ? monthTitle(on) : `${monthName(on)} to ${MONTHS[month + 1]} ${year}`;
}

/** "1 lunch", "3 lunches" */
export function count(number: number, one: string, many = `${one}s`): string {
  return `${number.toLocaleString("en")} ${number === 1 ? one : many}`;
}

/** "dependable", "resting until Thu 12 March" */
export function standingWords(standing: Standing): string {
  return standing.kind === "resting" ? `resting until ${mediumDay(standing.until)}` : standing.kind;
}
