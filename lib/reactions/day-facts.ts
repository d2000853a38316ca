import { settleFields, type Disagreement, type PhoneEntry, type Settled } from "./settle.ts";

/** The quick facts of a filming day. */
export type DayFacts = {
  /** Minutes that packing took; null when nobody looked at the clock. */
  readonly minutes: number | null;
  readonly hard: string;
  /** Shots the camera missed, to be picked up later. */
  readonly pickups: string;
};
export type DayFactsEntry = PhoneEntry<DayFacts>;
export type DayFactsConflict = Disagreement<DayFacts>;

/** A day of which nothing was said. */
export const NO_FACTS: DayFacts = { minutes: null, hard: "", pickups: "" };

/** What the entries about one day add up to. */
export function settleDayFacts(entries: readonly DayFactsEntry[]): Settled<DayFacts> {
  return settleFields(entries, NO_FACTS);
}
