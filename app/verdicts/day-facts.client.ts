"use client";

import type { DayFacts, DayFactsConflict } from "#lib/reactions/index.ts";
import type { Clash } from "./conflicts.client.tsx";
import type { Phone } from "./use-phone.client.ts";

const ASKS = {
  minutes: "How many minutes did it take?",
  hard: "What was hard?",
  pickups: "What did the camera miss?",
} as const;

/** The facts of a day on this phone: the server's, with what waits laid over them, and how to say more. */
export function dayFacts({ day, waiting, keep }: Phone) {
  const own = waiting.facts.filter(
    ({ entry, problem }) => entry.lunchId === day.lunchId && problem === undefined,
  );
  const values = own.reduce<DayFacts>(
    (facts, { entry }) => ({ ...facts, ...entry.change }),
    day.values,
  );
  const say = (change: Partial<DayFacts>): void =>
    void keep("facts", (stamp) => [
      { ...stamp(), lunchId: day.lunchId, baseRevision: day.revision, change },
    ]);
  const chosen = new Set(own.flatMap(({ entry }) => Object.keys(entry.change)));
  const clashes = day.conflicts
    .filter(({ field }) => !chosen.has(field))
    .map(({ field, said }): Clash => ({
      key: `day-${field}`,
      about: "The day",
      asks: ASKS[field],
      said: said.map(({ value, madeAt }) => ({
        words: inWords(field, value),
        madeAt,
        choose: () => {
          say({ [field]: value });
        },
      })),
    }));
  return { values, say, clashes, isWaiting: own.length > 0 };
}

function inWords(field: DayFactsConflict["field"], value: number | string | null): string {
  if (value === null || value === "") return "nothing";
  return field === "minutes" ? `${value} minutes` : `“${value}”`;
}
