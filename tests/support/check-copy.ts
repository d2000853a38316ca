import type { DraftItem, EpisodeRecords } from "#lib/drafts/index.ts";

/**
 * Reads a text as a stranger would and looks for slips of language. It knows nothing of how drafts are
 * written; the sounds behind "a" and "an" are from memory.
 */
export function languageSlips(text: string): string[] {
  const slips: string[] = [];
  const look = (name: string, pattern: RegExp): void => {
    for (const [hit] of text.matchAll(pattern)) slips.push(`${name}: ${hit}`);
  };
  look("placeholder", /\{\{|\}\}|\{%|%\}|undefined|\bnull\b|NaN|\[object|[\uE000-\uF8FF]/gu);
  look("double space", / {2,}| \n|\n /gu);
  look("space before a mark", / [,.;:!?](?!\p{L})/gu);
  look("doubled word", /\b(the|a|an|and|of|on|in|for|we) \1\b/giu);
  look("doubled mark", /[,;:]{2,}|\.\.(?!\.)|[.!?]”[.!?]/gu);
  look("empty list", /: \.|: ,|\band \.|of \./gu);
  look("plural after one", /\b(?:one|1) (?:lunches|minutes|weeks|tins|days|years|mornings)\b/giu);
  look(
    "singular after many",
    /\b(?:\d*[02-9]|\d+1|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve) (?:lunch|minute|week|tin|day|year|morning)\b/giu,
  );
  for (const [hit, article = "", word = ""] of text.matchAll(/\b(an?) ([\p{L}\p{N}-]+)/giu)) {
    if (article.toLowerCase() !== articleFor(word)) slips.push(`article: ${hit}`);
  }
  return slips;
}

/** "a" or "an" by the sound a word begins with. */
function articleFor(word: string): "a" | "an" {
  if (/^(?:hour|honest|honou?r|heir)/iu.test(word)) return "an";
  if (/^(?:uni[^n]|use|eu|ewe|one\b|once|ufo)/iu.test(word)) return "a";
  if (/^(?:8|11\b|18\b)/u.test(word)) return "an";
  if (/^[AEFHILMNORSX](?:-|[A-Z]|$)/u.test(word)) return "an";
  return /^[aeiouà-æè-ïò-ö]/iu.test(word) ? "an" : "a";
}

/** Private names that a text holds, whatever their case and accents. */
export function privateNamesIn(text: string, records: EpisodeRecords): string[] {
  const plain = bare(text);
  return records.children
    .map(({ privateName }) => privateName)
    .filter((name) =>
      name === "Will"
        ? /\bWill\b/u.test(text)
        : new RegExp(
            `(?<![\\p{L}])${bare(name)}${/\p{Script=Han}/u.test(name) ? "" : "(?![\\p{L}])"}`,
            "u",
          ).test(plain),
    );
}

function bare(text: string): string {
  return text
    .normalize("NFKD")
    .replace(/[\p{M}\u200B-\u200F\u2066-\u2069]/gu, "")
    .toLowerCase();
}

const VERBS = [
  [
    /\bfinished (?!everything|every bite|to the last)(.+?)(?=, ate| and ate|, and ate|, and left| and left|\.|$)/gu,
    4,
  ],
  [/\bate most of (.+?)(?=, ate| and ate|, and ate|, and left| and left|\.|$)/gu, 3],
  [/\bate half of (.+?)(?=, ate| and ate|, and ate|, and left| and left|\.|$)/gu, 2],
  [/\bate a little of (.+?)(?=, and left| and left|\.|$)/gu, 1],
  [/\bleft (?!all|most of|half of|a little of)(.+?)(?=\.|$| and finished)/gu, 0],
] as const;

/**
 * Verdicts a day's post states that the records do not hold. Read back from the words alone, line by
 * line: who, which verb, which foods.
 */
export function falseVerdicts(text: string, lunchId: string, records: EpisodeRecords): string[] {
  const lunch = records.lunches.find(({ id }) => id === lunchId);
  const items = (lunch?.items ?? []).filter(
    ({ fate }) => fate === "packed" || fate === "stepped-in",
  );
  const wrong: string[] = [];
  for (const sentence of text.split(/(?<=\.)\s+/u)) {
    const child = records.children.find(({ onScreenName }) => {
      const name = onScreenName.replace(/\s+/gu, " ");
      return sentence.startsWith(name) || sentence.includes(` in ${name}’s tin`);
    });
    if (!child || sentence.includes("“")) continue;
    const own = items.filter(({ notFor }) => !notFor.includes(child.id));
    const eaten = (item: DraftItem): number | null | undefined =>
      records.reactions.find((one) => one.itemId === item.id && one.childId === child.id)?.eaten;
    if (
      /finished everything\.|tin came home empty\.|ate the lot|empty it rattled|^Nothing came back/u.test(
        sentence,
      )
    ) {
      if (!own.every((item) => eaten(item) === 4)) wrong.push(sentence);
      continue;
    }
    if (/everything but|ate it all, except|finished the rest|^Only /u.test(sentence)) {
      const rest = own.filter((item) => eaten(item) !== 4);
      const left = /a little of/u.test(sentence)
        ? 3
        : /half of/u.test(sentence)
          ? 2
          : /most of/u.test(sentence)
            ? 1
            : 0;
      if (rest.length !== 1 || !rest.every((item) => named(sentence, item) && eaten(item) === left))
        wrong.push(sentence);
      continue;
    }
    if (/left all of it|came home full/u.test(sentence)) {
      if (!own.every((item) => eaten(item) === 0)) wrong.push(sentence);
      continue;
    }
    for (const [pattern, quarters] of VERBS) {
      for (const [, foods = ""] of sentence.matchAll(pattern)) {
        const told = own.filter((item) => named(foods, item));
        if (told.length === 0 || told.some((item) => eaten(item) !== quarters))
          wrong.push(`${sentence} (${quarters})`);
      }
    }
  }
  return wrong;
}

function named(text: string, item: DraftItem): boolean {
  const name = item.food.replace(/\s+/gu, " ").trim().replace(/\{\{/gu, "{").replace(/\}\}/gu, "}");
  // A plural may change the last letter: loaf, loaves.
  return text.includes(name) || (name.length > 4 && text.includes(name.slice(0, -1)));
}

const WORDS = "no one two three four five six seven eight nine ten eleven twelve".split(" ");

/** Numbers a text states of minutes, weeks, tins and lunches that cannot be counted from the records. */
export function falseNumbers(text: string, records: EpisodeRecords): string[] {
  const outsideQuotes = text.replace(/“[^”]*”/gu, "");
  const wrong: string[] = [];
  const look = (pattern: RegExp, holds: (...numbers: number[]) => boolean): void => {
    for (const [hit, ...found] of outsideQuotes.matchAll(pattern)) {
      const numbers = found
        .filter((one) => one !== undefined)
        .map((one) => (/^\d+$/u.test(one) ? Number(one) : WORDS.indexOf(one.toLowerCase())));
      if (!holds(...numbers)) wrong.push(hit);
    }
  };
  const packed = records.lunches.filter(({ isPacked }) => isPacked);
  const minutes = packed.map(({ minutesUsed }) => Math.round(minutesUsed ?? -1));
  look(/(\d+) minutes?/gu, (one = -1) => minutes.includes(one));
  look(/(\d+|[a-z]+) weeks/gu, (one = -1) =>
    [...records.lastPacked.values()].some((last) =>
      records.lunches.some(
        ({ date }) => Math.floor((Date.parse(date) - Date.parse(last)) / 604_800_000) === one,
      ),
    ),
  );
  const tins = tinsOf(records);
  const empty = tins.filter((tin) => tin.every((eaten) => eaten === 4)).length;
  look(/(\w+) of the (\w+) tins/gu, (some = -1, all = -1) => {
    const none = some === -1 ? 0 : some;
    return all === tins.length && (none === empty || (empty === 0 && none === 1));
  });
  look(/(\w+) lunch(?:es)?, one theme|as told by (\w+) lunch/giu, (one = -1, other = -1) => {
    const told = packed.filter(({ items }) =>
      items.some(({ fate }) => fate === "packed" || fate === "stepped-in"),
    );
    return told.length === 0 || told.length === Math.max(one, other);
  });
  return wrong;
}

/** Tins whose every food has a verdict, as the quarters eaten. */
function tinsOf({ lunches, children, reactions }: EpisodeRecords): number[][] {
  return lunches
    .filter(({ isPacked }) => isPacked)
    .flatMap(({ items }) =>
      children.map(({ id }) =>
        items
          .filter(
            ({ fate, notFor }) =>
              (fate === "packed" || fate === "stepped-in") && !notFor.includes(id),
          )
          .map(
            (item) =>
              reactions.find((one) => one.itemId === item.id && one.childId === id)?.eaten ?? -1,
          ),
      ),
    )
    .filter((tin) => tin.length > 0 && !tin.includes(-1));
}

/** Words in quotation marks that nobody said and no record holds. */
export function falseQuotes(text: string, records: EpisodeRecords): string[] {
  const held = plainWords(
    JSON.stringify([
      records.title,
      records.lunches.map(({ angle, items }) => [
        angle,
        items.map(({ reason, food }) => [reason, food]),
      ]),
      records.reactions.map(({ quote }) => quote),
    ]),
  );
  return [...text.matchAll(/“([^”]*)”/gu)]
    .map(([, words = ""]) => words)
    .filter(
      (words) => !words.split(/\[[^\]]*\]/u).every((part) => held.includes(plainWords(part))),
    );
}

/** Letters and digits alone, so that marks and spaces do not matter. */
function plainWords(text: string): string {
  return text.replace(/\\n/gu, " ").replace(/[^\p{L}\p{N}]+/gu, "");
}
