import { Day, dayFrom } from "#lib/calendar/index.ts";
import { Part } from "#lib/catalog/index.ts";
import { eatenFromShare, type Eaten } from "#lib/reactions/index.ts";
import type { PastReading } from "./past.input.ts";

/** The day a cell names in the file's own style, or undefined. */
export function readDay(cell: string, style: PastReading["dates"]): Day | undefined {
  const numbers = /^(\d{1,4})[-/.](\d{1,2})[-/.](\d{1,4})$/.exec(cell.trim());
  if (!numbers) return undefined;
  const [first, second, third] = numbers.slice(1).map(Number) as [number, number, number];
  const [year, month, date] = {
    ymd: [first, second, third],
    dmy: [third, second, first],
    mdy: [third, first, second],
  }[style] as [number, number, number];
  if (year < 1900 || month < 1 || month > 12 || date < 1 || date > 31) return undefined;
  const parsed = Day.safeParse(dayFrom(year, month, date));
  // A date beyond its month would roll over: 31 April is none.
  return parsed.success && Number(parsed.data.slice(8)) === date ? parsed.data : undefined;
}

/** The style that all dates of a file fit; when day and month cannot be told apart, the day is first. */
export function guessDateStyle(cells: readonly string[]): {
  readonly style: PastReading["dates"];
  readonly isSure: boolean;
} {
  const fits = (style: PastReading["dates"]): boolean =>
    cells.every((cell) => readDay(cell, style) !== undefined);
  if (cells.length === 0 || fits("ymd")) return { style: "ymd", isSure: true };
  if (fits("dmy")) return { style: "dmy", isSure: !fits("mdy") };
  return { style: fits("mdy") ? "mdy" : "ymd", isSure: true };
}

const EATEN_WORDS = new Map<string, Eaten>([
  ...entries(0, "none", "nothing", "no", "untouched"),
  ...entries(1, "¼", "1/4", "quarter", "a quarter", "one quarter"),
  ...entries(2, "½", "1/2", "half", "a half", "2/4"),
  ...entries(3, "¾", "3/4", "three quarters", "most"),
  ...entries(4, "all", "everything", "4/4", "yes"),
]);

/** The quarter scale in words, as an export writes it. */
export const EATEN_TEXT = ["none", "¼", "½", "¾", "all"] as const;

/** True when a column of eaten amounts counts quarters, 0 to 4: some cell is above 1. */
export function countsQuarters(cells: readonly string[]): boolean {
  return cells.some((cell) => ["2", "3", "4"].includes(cell.trim()));
}

/**
 * How much was eaten, on the quarter scale: a word, a fraction, a percentage, a share from 0 to 1, or
 * a number of quarters where the column counts them. `isRounded` when the scale has no such step.
 */
export function readEaten(
  cell: string,
  inQuarters: boolean,
): { readonly eaten: Eaten; readonly isRounded: boolean } | undefined {
  const text = cell.trim().toLowerCase();
  const word = EATEN_WORDS.get(text);
  if (word !== undefined) return { eaten: word, isRounded: false };
  const percent = /^(\d{1,3}(?:[.,]\d+)?)\s*%$/.exec(text)?.[1];
  const plain = /^\d(?:[.,]\d+)?$/.exec(text)?.[0];
  const number = Number((percent ?? plain ?? "x").replace(",", "."));
  const share = percent === undefined && !inQuarters ? number : number / (percent ? 100 : 4);
  if (!(share >= 0 && share <= 1)) return undefined;
  return { eaten: eatenFromShare(share), isRounded: share * 4 !== Math.round(share * 4) };
}

const PART_WORDS = new Map<string, Part>([
  ...Part.options.map((part) => [part, part] as const),
  ...(["veg", "veggie", "veggies", "vegetables"] as const).map((w) => [w, "vegetable"] as const),
  ...(["carb", "bread", "grains", "starch"] as const).map((w) => [w, "grain"] as const),
  ...(["sweet", "dessert", "treats"] as const).map((w) => [w, "treat"] as const),
  ...(["snack", "side", "extras"] as const).map((w) => [w, "extra"] as const),
  ...(["sauce", "dips", "spread"] as const).map((w) => [w, "dip"] as const),
  ...(["fruits"] as const).map((w) => [w, "fruit"] as const),
  ...(["drinks"] as const).map((w) => [w, "drink"] as const),
]);

/** The part a cell names, or undefined. */
export function readPart(cell: string): Part | undefined {
  return PART_WORDS.get(cell.trim().toLowerCase());
}

/** A plain number, with a decimal point or comma; undefined when it is none. */
export function readNumber(cell: string): number | undefined {
  const text = cell.trim();
  if (!/^\d+(?:[.,]\d+)?(?:e-?\d+)?$/i.test(text)) return undefined;
  return Number(text.replace(",", "."));
}

function entries(eaten: Eaten, ...words: readonly string[]): [string, Eaten][] {
  return words.map((word) => [word, eaten]);
}
