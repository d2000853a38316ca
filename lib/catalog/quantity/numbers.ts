/** Vulgar fractions of Unicode and their values. */
export const VULGAR_FRACTIONS = {
  "¼": 1 / 4,
  "½": 1 / 2,
  "¾": 3 / 4,
  "⅓": 1 / 3,
  "⅔": 2 / 3,
  "⅕": 1 / 5,
  "⅖": 2 / 5,
  "⅗": 3 / 5,
  "⅘": 4 / 5,
  "⅙": 1 / 6,
  "⅚": 5 / 6,
  "⅛": 1 / 8,
  "⅜": 3 / 8,
  "⅝": 5 / 8,
  "⅞": 7 / 8,
} as const;

const WORDS: Record<string, number> = {
  a: 1,
  an: 1,
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
  eleven: 11,
  twelve: 12,
};
const FRACTION_WORDS: Record<string, number> = {
  half: 1 / 2,
  third: 1 / 3,
  thirds: 1 / 3,
  quarter: 1 / 4,
  quarters: 1 / 4,
  fourth: 1 / 4,
  fourths: 1 / 4,
  eighth: 1 / 8,
  eighths: 1 / 8,
};
const WORD = `(?:${Object.keys(WORDS).join("|")})`;
const FRACTION_WORD = `(?:${Object.keys(FRACTION_WORDS).join("|")})`;
const VULGAR = `[${Object.keys(VULGAR_FRACTIONS).join("")}]`;
const DIGITS = String.raw`\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+(?:[.,]\d+)?|\.\d+`;

type ValueOf = (groups: readonly string[]) => number | undefined;
type Shape = readonly [RegExp, ValueOf];

const SHAPES: readonly Shape[] = [
  shape(`(\\d+)[ -]*(${VULGAR})`, ([whole, part]) => digits(whole) + vulgar(part)),
  shape(`(${VULGAR})`, ([part]) => vulgar(part)),
  shape(String.raw`(\d+)(?:\s+|\s*-\s*|\s+and\s+)(\d+)\s*[/⁄]\s*(\d+)`, ([whole, top, bottom]) =>
    plus(digits(whole), ratio(top, bottom)),
  ),
  shape(String.raw`(\d+)\s*[/⁄]\s*(\d+)`, ([top, bottom]) => ratio(top, bottom)),
  shape(`(${DIGITS})`, ([number]) => digits(number)),
  wordShape(
    `(${WORD})\\s+and\\s+(?:a\\s+)?(${FRACTION_WORD})`,
    ([whole, part]) => word(whole) + fraction(part),
  ),
  wordShape("(half\\s+a\\s+dozen)", () => 6),
  wordShape("((?:a|one)\\s+dozen|dozen)", () => 12),
  wordShape("(a\\s+couple(?:\\s+of)?|couple(?:\\s+of)?|a\\s+pair\\s+of)", () => 2),
  wordShape(
    `(${WORD})[ -](${FRACTION_WORD})(?:\\s+of)?(?:\\s+an?)?`,
    ([whole, part]) => word(whole) * fraction(part),
  ),
  wordShape(`(${FRACTION_WORD})(?:\\s+of)?(?:\\s+an?)?`, ([part]) => fraction(part)),
  wordShape(`(${WORD})`, ([whole]) => word(whole)),
];

/** A number at the start of a text and what follows it. */
export type LeadingNumber = { readonly value: number; readonly rest: string };

/**
 * Reads the number a text starts with: "1 1/2", "1-1/2", "1½", "½", "0.5", ".5", "1,5" (a comma
 * before three digits separates thousands), "a half", "two thirds", "one and a half", "a dozen".
 * Undefined when there is none or it is not positive and finite.
 */
export function leadingNumber(text: string): LeadingNumber | undefined {
  for (const [pattern, valueOf] of SHAPES) {
    const found = pattern.exec(text);
    if (!found) continue;
    const value = valueOf(found.slice(1).map((group) => group.toLowerCase()));
    if (value === undefined || !Number.isFinite(value) || value <= 0) return undefined;
    return { value, rest: text.slice(found[0].length) };
  }
  return undefined;
}

function shape(source: string, valueOf: ValueOf): Shape {
  return [new RegExp(`^(?:${source})`, "iu"), valueOf];
}

/** A number word must end where a word ends: "a" is not the start of "apple". */
function wordShape(source: string, valueOf: ValueOf): Shape {
  return shape(`(?:${source})(?![\\p{L}\\d])`, valueOf);
}

function digits(text = ""): number {
  const thousands = /^\d{1,3}(,\d{3})+(\.\d+)?$/.test(text);
  return Number(thousands ? text.replaceAll(",", "") : text.replace(",", "."));
}

function ratio(top = "", bottom = ""): number | undefined {
  return Number(bottom) === 0 ? undefined : Number(top) / Number(bottom);
}

function plus(left: number, right: number | undefined): number | undefined {
  return right === undefined ? undefined : left + right;
}

function vulgar(sign = ""): number {
  return Object.entries(VULGAR_FRACTIONS).find(([key]) => key === sign)?.[1] ?? Number.NaN;
}

function word(text = ""): number {
  return WORDS[text] ?? Number.NaN;
}

function fraction(text = ""): number {
  return FRACTION_WORDS[text] ?? Number.NaN;
}
