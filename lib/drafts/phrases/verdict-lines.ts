import type { VerdictDetail } from "../facts/fact.ts";
import { capital, definite, listOf, quoted, type Noun } from "../words/index.ts";
import type { Bank } from "./bank.ts";

/** What a child ate of a lunch; "everything" only where every food has a verdict. */
export function verdictLines(verdict: VerdictDetail): Bank {
  const { all, most, half, little, none, isWhole } = verdict;
  const name = capital(verdict.name);
  const rest = [...most, ...half, ...little, ...none];
  if (isWhole && rest.length === 0 && all.length > 1) return clearedLines(name, verdict.name);
  if (isWhole && none.length > 1 && none.length === all.length + rest.length) {
    return {
      plain: [
        `${name} left all of it.`,
        `Nothing doing for ${verdict.name}: the tin came home full.`,
      ],
    };
  }
  const [only] = rest;
  if (isWhole && rest.length === 1 && only && all.length > 1) {
    return almostLines(name, only, partLeft(verdict, only));
  }
  const clauses = [
    clause("finished", all),
    clause("ate most of", most),
    clause("ate half of", half),
    clause("ate a little of", little),
    clause("left", none),
  ].filter((text) => text !== "");
  return { plain: [`${name} ${listOf(clauses)}.`] };
}

function clearedLines(name: string, inside: string): Bank {
  return {
    plain: [
      `${name} finished everything.`,
      `${name}’s tin came home empty.`,
      `Nothing came back in ${inside}’s tin.`,
      `${name} ate the lot.`,
    ],
    playful: [`${name}’s tin came home so empty it rattled.`],
  };
}

function almostLines(name: string, food: Noun, left: string): Bank {
  const thing = definite(food.bare);
  return {
    plain: [
      `${name} finished everything but ${left}${thing}.`,
      `${name} ate it all, except for ${left}${thing}.`,
      left === "" && !food.isMany
        ? `Only ${thing} came back from ${name}.`
        : `${name} left ${left}${thing} and finished the rest.`,
    ],
  };
}

/** What of a food stayed in the tin: all of it (""), "most of ", "half of ", "a little of ". */
function partLeft({ most, half, little }: VerdictDetail, food: Noun): string {
  if (most.includes(food)) return "a little of ";
  if (half.includes(food)) return "half of ";
  return little.includes(food) ? "most of " : "";
}

function clause(verb: string, foods: readonly Noun[]): string {
  if (foods.length === 0) return "";
  const [first = "", ...others] = foods.map(({ bare }) => bare);
  return `${verb} ${listOf([definite(first), ...others])}`;
}

/** A child's own words on a food. */
export function quoteLines(quote: {
  readonly name: string;
  readonly about: Noun;
  readonly words: string;
}): Bank {
  const words = quoted(quote.words);
  const thing = definite(quote.about.bare);
  const name = capital(quote.name);
  return {
    plain: [
      `${name} on ${thing}: ${words}`,
      `${name} had this to say about ${thing}: ${words}`,
      `${name}’s verdict on ${thing}: ${words}`,
      `Word from ${quote.name} about ${thing}: ${words}`,
    ],
  };
}
