import indefinite from "indefinite";
import pluralize from "pluralize";
import { isolated, tidy } from "./tidy.ts";

/** A food as a sentence can use it. */
export type Noun = {
  /** "pear", "cucumber slices" */
  readonly bare: string;
  /** With what the kind of noun asks for: "a pear", "half a pear", "cucumber slices", "rye bread". */
  readonly some: string;
  /** Whether its verb is plural: "the slices were". */
  readonly isMany: boolean;
};

const MASS = new Set(["hummus", "asparagus", "couscous", "molasses", "citrus"]);
/** Counted, and yet without a plural of its own: "baby corn". */
const NEVER_MANY = new Set(["corn"]);
const OWNED = /^(?:the|a|an|our|my|your|his|her|their|some)\s|^\p{Lu}\S*[’']s\s/iu;

/**
 * A food's name as a noun. Counted ones take an article or a plural by how many one child gets; what
 * is neither about one nor about half of one goes bare.
 */
export function nounOf(food: {
  readonly name: string;
  readonly countUnit?: string | null;
  readonly count?: number | null;
}): Noun {
  const bare = tidy(food.name);
  const shown = isolated(bare);
  if (isMany(bare)) return { bare: shown, some: shown, isMany: true };
  const { count } = food;
  if (typeof count !== "number" || !isCounted(bare, food.countUnit)) {
    return { bare: shown, some: shown, isMany: false };
  }
  if (count > 1.25) return manyOf(bare);
  const one = withArticle(bare);
  const some = count > 0.75 ? one : Math.abs(count - 0.5) < 0.1 ? `half ${one}` : bare;
  return { bare, some, isMany: false };
}

/** A food in general, whatever one child got: "pears", "rye bread", "cucumber slices". */
export function kindOf(food: { readonly name: string; readonly countUnit: string | null }): Noun {
  const bare = tidy(food.name);
  return isMany(bare) || !isCounted(bare, food.countUnit) ? nounOf(food) : manyOf(bare);
}

function manyOf(bare: string): Noun {
  const many = isolated(pluralOf(bare));
  return { bare: many, some: many, isMany: true };
}

/** "the rye bread"; a name that brings its own article or owner keeps it: "Grandma’s soup". */
export function definite(noun: string): string {
  return OWNED.test(noun) ? noun : `the ${noun}`;
}

/** "a pear", "an apple", "an 80-gram roll"; a name that begins with no letter or digit goes without. */
export function withArticle(noun: string): string {
  if (!/^[a-z0-9]/iu.test(noun) || OWNED.test(noun)) return noun;
  return once(articles, noun, indefinite);
}

/** Whether a name is a plural noun: judged by its head, words that are both counting as one. */
export function isMany(name: string): boolean {
  return once(manies, name, () => {
    const head = headOf(name);
    return !MASS.has(head) && pluralize.isPlural(head) && !pluralize.isSingular(head);
  });
}

const manies = new Map<string, boolean>();
const plurals = new Map<string, string>();
const articles = new Map<string, string>();
/** So many names are remembered: the rules behind them are slow, and names come again and again. */
const NAMES_MOST = 5_000;

function pluralOf(name: string): string {
  return once(plurals, name, () => pluralize(name));
}

function once<Value>(kept: Map<string, Value>, name: string, make: (name: string) => Value): Value {
  const known = kept.get(name);
  if (known !== undefined) return known;
  if (kept.size >= NAMES_MOST) kept.clear();
  const made = make(name);
  kept.set(name, made);
  return made;
}

function headOf(name: string): string {
  const [phrase = ""] = name.toLowerCase().split(/ (?:with|in|on|of|and|for|from) |[,(]/u);
  return phrase.trim().split(/[\s-]/u).at(-1) ?? "";
}

function isCounted(name: string, countUnit: string | null | undefined): boolean {
  if (!countUnit || / (?:on|of|and|with) /u.test(name) || NEVER_MANY.has(headOf(name)))
    return false;
  return headOf(countUnit) === headOf(name) || name === `${countUnit} orange`;
}
