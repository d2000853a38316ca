import { readQuantity } from "../quantity/read-quantity.ts";

/** How surely a text names one food: the score of the best match, 0 for none. */
export type NamingScore = (text: string) => number;

/** From here "Beans, snap" is taken for one name turned round at its comma, not for two foods. */
const TURNED_SCORE = 0.9;

const SEPARATORS = /[;\n+•|]+/;
/** A part that carries on the one before it: a cut, a remark. */
const CARRIES_ON =
  /^(?:sliced|cut|peeled|diced|chopped|halved|quartered|in |into |no |not |each\b|per )/i;

/**
 * The items of a lunch typed as one line. Semicolons, plus signs and line breaks part items. Commas
 * do where what follows names a food; an amount or a remark after a comma stays with its item. "with"
 * and "and" part items when both sides name foods and the whole names none.
 */
export function splitLine(line: string, namingScore: NamingScore): string[] {
  return line
    .split(SEPARATORS)
    .flatMap((chunk) => splitAtCommas(chunk, namingScore))
    .flatMap((chunk) => splitAtWord(chunk, namingScore))
    .map((chunk) => chunk.trim())
    .filter((chunk) => /[\p{L}\d]/u.test(chunk));
}

function splitAtCommas(chunk: string, namingScore: NamingScore): string[] {
  const items: string[] = [];
  for (const part of chunk.split(/,(?!\d)/)) {
    const previous = items.at(-1);
    const text = part.trim();
    const withFood = text.replace(/^(?:and|with|plus)\s+/i, "");
    const { quantity, rest } = readQuantity(withFood);
    const isAmount = quantity !== null && rest.replace(/^(?:each|per child)$/i, "") === "";
    const isPlain = previous !== undefined && text === withFood && !quantity;
    const isTurned =
      isPlain && (namingScore(text) === 0 || namingScore(`${previous}, ${text}`) >= TURNED_SCORE);
    if (previous === undefined) items.push(text);
    else if (isAmount || isTurned || CARRIES_ON.test(text))
      items[items.length - 1] = `${previous}, ${text}`;
    else items.push(withFood);
  }
  return items;
}

function splitAtWord(chunk: string, namingScore: NamingScore): string[] {
  if (namingScore(readQuantity(chunk).rest) > 0 && !/\swith\s/i.test(chunk)) return [chunk];
  for (const joint of [/\s+with\s+(?:a |an |the |some )?/i, /\s+(?:and|&|plus)\s+/i]) {
    const found = joint.exec(chunk);
    if (!found) continue;
    const first = chunk.slice(0, found.index).replace(/,\s*$/, "");
    const second = chunk.slice(found.index + found[0].length);
    const both = [first, second].every((side) => namingScore(readQuantity(side).rest) > 0);
    if (both) return [first, ...splitAtWord(second, namingScore)];
  }
  return [chunk];
}
