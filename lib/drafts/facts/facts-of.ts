import type { EpisodeRecords } from "../records.ts";
import { cleanRecords } from "./clean-records.ts";
import type { Fact } from "./fact.ts";
import { goodsFacts } from "./goods-facts.ts";
import { lunchFacts } from "./lunch-facts.ts";
import { verdictFacts } from "./verdict-facts.ts";
import { viewerFacts } from "./viewer-facts.ts";
import { weekFacts } from "./week-facts.ts";

/**
 * Everything an episode's records allow to be told, flat. Scrapped items are told only as left
 * behind; nothing is told as done before its lid was shut.
 */
export function factsOf(records: EpisodeRecords): Fact[] {
  return factsOfClean(cleanRecords(records));
}

/** The same of records that `cleanRecords` has been through. */
export function factsOfClean(clean: EpisodeRecords): Fact[] {
  return [
    ...goodsFacts(clean),
    ...weekFacts(clean),
    ...clean.lunches.flatMap((lunch) => [
      ...lunchFacts(lunch, clean),
      ...verdictFacts(lunch, clean),
    ]),
    ...viewerFacts(clean),
  ];
}
