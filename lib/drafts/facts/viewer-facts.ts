import { addDays, mediumDay } from "#lib/calendar/index.ts";
import type { EpisodeRecords } from "../records.ts";
import type { Fact } from "./fact.ts";

/** Promises kept in this episode's week or still open, and what comes next. */
export function viewerFacts(records: EpisodeRecords): Fact[] {
  const { weekOf, nextTitle } = records;
  const sunday = addDays(weekOf, 6);
  const promises = records.promises.map((one): Fact => {
    const keptNow = one.keptOn !== null && one.keptOn >= weekOf && one.keptOn <= sunday;
    return {
      ...{ id: `promise:${one.id}`, kind: "promise", on: null },
      detail: { kind: "promise", what: one.what, keptNow },
      refs: [{ table: "ViewerPromise", id: one.id }],
      label: "A promise to viewers",
      rows: [
        ["Promised", one.what],
        ["Kept", one.keptOn === null ? "not yet" : mediumDay(one.keptOn)],
      ],
    };
  });
  if (nextTitle === null) return promises;
  const next: Fact = {
    ...{ id: "next", kind: "next", on: null, detail: { kind: "next", title: nextTitle } },
    refs: [],
    label: "The next theme on the slate",
    rows: [["Next", nextTitle]],
  };
  return [...promises, next];
}
