import type { Random } from "#lib/base/index.ts";
import type { Food } from "#lib/catalog/index.ts";
import rows from "./data/quotes.json" with { type: "json" };

/** How a verdict sounds. */
export type Mood = "love" | "good" | "meh" | "no" | "full";

/** A line a child might say of a food. */
export type Quote = {
  readonly child: string;
  readonly mood: string;
  /** "any", or "group:…", "part:…", "family:…". */
  readonly about: string;
  readonly text: string;
};

/** Every line of the bank: Biscuit talks like nine, Pepper like five. */
export const QUOTES: readonly Quote[] = rows;

/** Says what fits a child, a mood and a food, without repeating itself soon. */
export class QuoteBook {
  readonly #said = new Map<string, number>();
  #clock = 0;

  /** A line, or "" when none fits that was not said lately. */
  say(random: Random, childId: string, mood: Mood, food: Food, part: string): string {
    this.#clock += 1;
    const abouts = ["any", `part:${part}`, ...plainAbouts(food, part)];
    const fits = QUOTES.filter(
      ({ child, mood: sounds, about, text }) =>
        child === childId &&
        sounds === mood &&
        abouts.includes(about) &&
        this.#clock - (this.#said.get(text) ?? -Infinity) > 150,
    );
    // What is said of the very food comes first two times in three.
    const exact = fits.filter(({ about }) => about.startsWith("family:"));
    const pool = exact.length > 0 && random.next() < 0.67 ? exact : fits;
    if (pool.length === 0) return "";
    const { text } = random.pick(pool);
    this.#said.set(text, this.#clock);
    return text;
  }
}

/** Parts whose food is what its group says: a bar is no bread and a pouch of puree no apple. */
const PLAIN_PARTS: Readonly<Record<string, string>> = {
  ...{ main: "protein", protein: "protein", grain: "grain", vegetable: "vegetable" },
  ...{ fruit: "fruit", dairy: "dairy", treat: "treat" },
};
const TREAT_FAMILIES = new Set(["oats", "popcorn", "muffin", "quick-bread"]);

function plainAbouts({ group, family }: Food, part: string): string[] {
  const isKin = part !== "treat" || TREAT_FAMILIES.has(family);
  const isPlain = PLAIN_PARTS[part] === group || part === "treat";
  return [
    ...(isKin ? [`family:${family}`] : []),
    ...(isPlain ? [`group:${PLAIN_PARTS[part] ?? part}`] : []),
  ];
}

/** The mood of a verdict; where no face was given, the amount speaks. */
export function moodOf(eaten: number, given: number | null, isFullDay: boolean): Mood {
  const face = given ?? eaten * 25;
  if (isFullDay && eaten <= 1) return "full";
  if (eaten === 0 || face < 20) return "no";
  if (face >= 90 && eaten === 4) return "love";
  return face >= 65 && eaten >= 3 ? "good" : face < 40 && eaten <= 1 ? "no" : "meh";
}
