/** Drafts: facts from records, sentences that know them, what turns stale, and guards before copying. */
export type {
  EpisodeRecords,
  ItemRecord,
  LunchRecord,
  ProductRecord,
  ReactionRecord,
} from "./records.ts";
export { factsOf, type Fact } from "./facts.ts";
export { draftOf, staleOf, textOf, type Draft, type DraftKind, type Sentence } from "./draft.ts";
export { guardsOf, type Guard } from "./guards.ts";
