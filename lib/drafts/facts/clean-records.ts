import type { DraftChild, EpisodeRecords } from "../records.ts";
import { folded, privateSpans } from "../guards/private-words.ts";
import { tidy } from "../words/index.ts";

/**
 * The records with every text made fit to be told: on one line, private names of children turned into
 * their on-screen names (in brackets inside a quote, as is usual for an altered quotation), and what
 * holds another private word left out.
 */
export function cleanRecords(records: EpisodeRecords): EpisodeRecords {
  const plain = (text: string): string => told(records, tidy(text), false);
  const lunches = records.lunches.map((lunch) => ({
    ...lunch,
    angle: plain(lunch.angle),
    items: lunch.items.map((item) => ({
      ...item,
      food: plain(item.food),
      reason: plain(item.reason),
      shop: item.shop === null ? null : plain(item.shop),
      tricks: item.tricks.map((trick) => ({ ...trick, name: plain(trick.name) })),
      product: item.product && {
        ...item.product,
        name: plain(item.product.name),
        disclosure: plain(item.product.disclosure),
      },
    })),
  }));
  return {
    ...records,
    title: plain(records.title).replace(/(?<!\.)\.$/u, "") || "this week",
    seriesName: plain(records.seriesName),
    nextTitle: records.nextTitle === null ? null : plain(records.nextTitle) || null,
    lunches,
    children: records.children.map((child) => ({ ...child, onScreenName: nameOf(child, records) })),
    reactions: records.reactions.map((one) => ({
      ...one,
      quote: told(records, tidy(one.quote), true),
    })),
    promises: records.promises.map((one) => ({ ...one, what: plain(one.what) })),
  };
}

/** The name on screen; a child whose name there is missing or private is told of without one. */
function nameOf(child: DraftChild, records: EpisodeRecords): string {
  const name = tidy(child.onScreenName);
  const isPrivate = privateSpans(name, privateNames(records)).length > 0;
  return name === "" || isPrivate ? "one of the children" : name;
}

function privateNames({ children }: EpisodeRecords): string[] {
  return children.map((child) => child.privateName);
}

function told(records: EpisodeRecords, text: string, isQuote: boolean): string {
  if (text === "") return "";
  if (privateSpans(text, wordsThatStay(records)).length > 0) return "";
  let clean = text;
  for (const child of records.children) {
    const spans = privateSpans(clean, [child.privateName]).reverse();
    const name = nameOf(child, records);
    for (const [from, to] of spans)
      clean = `${clean.slice(0, from)}${isQuote ? `[${name}]` : name}${clean.slice(to)}`;
  }
  return clean;
}

/** Private words other than the children's names, which have a name on screen to give way to. */
function wordsThatStay(records: EpisodeRecords): string[] {
  const names = new Set(privateNames(records).map((name) => folded(name).plain.trim()));
  return records.voice.privateWords.filter((word) => !names.has(folded(word).plain.trim()));
}
