import { singularOf } from "../match/terms.ts";
import { ALLERGENS, type Allergen } from "../vocabulary.ts";
import { LABEL_WORDS, type LabelEntry } from "./label-words.ts";

/** An allergen that a text speaks of, and the words that do. */
export type ToldAllergen = { readonly allergen: Allergen; readonly words: string };

/** What a name or an ingredient list speaks of: held, or held by some makes. Silence is no promise. */
export type LabelReading = {
  readonly holds: readonly ToldAllergen[];
  readonly someMakes: readonly ToldAllergen[];
};

type Token = { readonly shown: string; readonly word: string };
type Hit = { readonly entry: LabelEntry; readonly at: number; readonly length: number };

/** Words after which an allergen is said to be missing; a claim that is passed on as a question only. */
const BEFORE_CLAIM = new Set(["no", "without", "non", "not", "zero"]);
const AFTER_CLAIM = new Set(["free", "less", "alternative", "substitute", "style"]);
/** What a maker calls free of anything from an animal. */
const PLANT_ONLY = /\b(?:vegan|plant[- ]based|dairy[- ]free)\b/;
const FROM_ANIMALS: readonly Allergen[] = ["milk", "egg", "fish", "crustacean", "mollusc"];
/** What a maker calls free of gluten, in any writing. */
const NO_GLUTEN = /\b(?:gf|gluten[- ]free|free (?:of|from) gluten)\b/;
const GLUTEN: readonly Allergen[] = ["wheat", "rye", "barley", "oats"];
/** From here to the end of the sentence, what is named is only possible. */
const MAY_CONTAIN = /\b(?:may (?:also )?contain|traces? of|made (?:in|on) .{0,40}that)\b/;

/**
 * Reads a food's name or the words of its label for allergens, longest phrase first ("coconut milk" is
 * no milk). What a maker says is missing ("egg-free") is asked, never taken as gone. It helps to tick
 * boxes; the label itself, read by a person, goes first.
 */
export function readAllergens(text: string): LabelReading {
  const holds = new Map<Allergen, string>();
  const someMakes = new Map<Allergen, string>();
  const read = text.slice(0, MOST).toLowerCase();
  const claimed = [
    ...(PLANT_ONLY.test(read) ? FROM_ANIMALS : []),
    ...(NO_GLUTEN.test(read) ? GLUTEN : []),
  ];
  for (const sentence of read.split(/[.;!?\n]+/)) {
    const from = sentence.search(MAY_CONTAIN);
    readPart(from < 0 ? sentence : sentence.slice(0, from), claimed, holds, someMakes);
    if (from >= 0) readPart(sentence.slice(from), [], someMakes, someMakes);
  }
  return {
    holds: listed(holds),
    someMakes: listed(someMakes).filter(({ allergen }) => !holds.has(allergen)),
  };
}

/** Longer than any label; more is not read. */
const MOST = 20_000;

function listed(found: ReadonlyMap<Allergen, string>): ToldAllergen[] {
  return ALLERGENS.flatMap((allergen) => {
    const words = found.get(allergen);
    return words === undefined ? [] : [{ allergen, words }];
  });
}

function readPart(
  text: string,
  claimed: readonly Allergen[],
  holds: Map<Allergen, string>,
  someMakes: Map<Allergen, string>,
): void {
  const tokens = tokensOf(text);
  const hits = hitsOf(tokens);
  const denied = new Set(claimed);
  for (const hit of hits) if (isDenied(tokens, hit)) hit.entry.holds.forEach((a) => denied.add(a));
  const add = (into: Map<Allergen, string>, allergen: Allergen, words: string): void => {
    if (!into.has(allergen)) into.set(allergen, words);
  };
  for (const hit of hits) {
    if (isCategory(tokens, hits, hit)) continue;
    const words = tokens
      .slice(hit.at, hit.at + hit.length)
      .map(({ shown }) => shown)
      .join(" ");
    for (const allergen of hit.entry.holds) {
      add(denied.has(allergen) ? someMakes : holds, allergen, words);
    }
    for (const allergen of hit.entry.someMakes) add(someMakes, allergen, words);
  }
}

function tokensOf(text: string): Token[] {
  const plain = text.normalize("NFKD").replaceAll(/\p{M}/gu, "");
  return (plain.match(/\p{L}+|,/gu) ?? []).map((shown) => ({ shown, word: singularOf(shown) }));
}

function hitsOf(tokens: readonly Token[]): Hit[] {
  const hits: Hit[] = [];
  for (let at = 0; at < tokens.length;) {
    const entry = LABEL_WORDS.get(tokens[at]?.word ?? "")?.find(({ words }) =>
      words.every((word, ahead) => tokens[at + ahead]?.word === word),
    );
    if (entry) hits.push({ entry, at, length: entry.words.length });
    at += entry?.words.length ?? 1;
  }
  return hits;
}

function isDenied(tokens: readonly Token[], { at, length }: Hit): boolean {
  const after = tokens[at + length]?.shown ?? "";
  const [before, further] = [tokens[at - 1]?.shown ?? "", tokens[at - 2]?.shown ?? ""];
  const isFreeFrom = (before === "from" || before === "of") && further === "free";
  return AFTER_CLAIM.has(after) || BEFORE_CLAIM.has(before) || isFreeFrom;
}

/** "Nuts, chestnuts, roasted": a table's heading says less than the nut that follows it. */
function isCategory(tokens: readonly Token[], hits: readonly Hit[], hit: Hit): boolean {
  const isHeading = hit.at === 0 && tokens[hit.length]?.word === ",";
  if (!isHeading || hit.entry.words[0] !== "nut") return false;
  return hits.some((other) => other.at === hit.length + 1);
}
