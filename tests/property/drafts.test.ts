import fc from "fast-check";
import { expect, it } from "vitest";
import { longWeekday } from "#lib/calendar/index.ts";
import {
  compose,
  DEFAULT_TEMPLATES,
  DRAFT_KINDS,
  tellingOf,
  type EpisodeRecords,
} from "#lib/drafts/index.ts";
import {
  falseNumbers,
  falseQuotes,
  falseVerdicts,
  languageSlips,
  privateNamesIn,
} from "#tests/support/check-copy.ts";
import { oddEpisode } from "#tests/support/odd-episodes.ts";

const RUNS = { numRuns: 500, seed: 20260311 } as const;

type Written = { readonly name: string; readonly lunchId: string | null; readonly text: string };

function everyPiece(records: EpisodeRecords): Written[] {
  const told = tellingOf(records);
  return DRAFT_KINDS.flatMap((kind) => {
    const lunches = kind === "lunch-post" ? records.lunches.map(({ id }) => id) : [null];
    return lunches.map((lunchId) => {
      const composed = compose(told, DEFAULT_TEMPLATES[kind], lunchId);
      if (!composed.ok) throw new Error(`${kind}: ${composed.problem.message}`);
      return { name: `${kind} ${lunchId ?? ""}`, lunchId, text: composed.value.text };
    });
  });
}

it("no draft of 500 odd episodes holds a placeholder, a slip of language or a private name", () => {
  fc.assert(
    fc.property(oddEpisode, (records) => {
      for (const { name, text } of everyPiece(records)) {
        expect({ name, slips: languageSlips(text) }).toEqual({ name, slips: [] });
        expect({ name, names: privateNamesIn(text, records) }).toEqual({ name, names: [] });
      }
    }),
    RUNS,
  );
});

it("no draft states a verdict, a day, a quote or a food that the records do not hold", () => {
  fc.assert(
    fc.property(oddEpisode, (records) => {
      const days = new Set(records.lunches.map(({ date }) => longWeekday(date)));
      for (const { name, lunchId, text } of everyPiece(records)) {
        if (lunchId !== null)
          expect({ name, wrong: falseVerdicts(text, lunchId, records) }).toEqual({
            name,
            wrong: [],
          });
        const foreign = [...text.matchAll(/\b(?:Mon|Tues|Wednes|Thurs|Fri)day\b/gu)]
          .map(([day]) => day)
          .filter((day) => !days.has(day) && !/Is it Friday\?/u.test(text));
        expect({ name, foreign }).toEqual({ name, foreign: [] });
        expect({ name, quotes: falseQuotes(text, records) }).toEqual({ name, quotes: [] });
        expect({ name, numbers: falseNumbers(text, records) }).toEqual({ name, numbers: [] });
      }
    }),
    RUNS,
  );
});

it("scrapped food is never told as packed, nor anything of a day whose lid stayed open", () => {
  fc.assert(
    fc.property(oddEpisode, (records) => {
      for (const lunch of records.lunches) {
        const open = !lunch.isPacked && lunch.date < records.today;
        const told = tellingOf(records);
        const composed = compose(told, "{{ day.id }}: {{ day.foods }}", lunch.id);
        const text = composed.ok ? composed.value.text : "";
        if (open) expect(text.startsWith(`${lunch.id}:`)).toBe(false);
        const scrapped = lunch.items.filter(({ fate }) => fate === "scrapped");
        const packed = lunch.items.filter(({ fate }) => fate !== "scrapped");
        if (!text.startsWith(`${lunch.id}:`)) continue;
        for (const { food } of scrapped)
          if (!packed.some((one) => one.food.includes(food) || food.includes(one.food)))
            expect(text).not.toContain(food);
      }
    }),
    RUNS,
  );
});

it("the generator makes what it promises: nothing logged, all scrapped, absent, empty, quoting", () => {
  const seen = fc.sample(oddEpisode, { numRuns: 500, seed: RUNS.seed });
  const count = (holds: (one: EpisodeRecords) => boolean): number => seen.filter(holds).length;
  expect(count(({ reactions }) => reactions.length === 0)).toBeGreaterThan(20);
  expect(
    count(({ lunches }) =>
      lunches.some(
        ({ items }) => items.length > 0 && items.every((one) => one.fate === "scrapped"),
      ),
    ),
  ).toBeGreaterThan(20);
  expect(count(({ children }) => children.length === 1)).toBeGreaterThan(20);
  expect(
    count(({ reactions }) => reactions.some((one) => /took my/u.test(one.quote))),
  ).toBeGreaterThan(20);
});

it.each([
  "We packed a apple.",
  "We packed an unicorn cake.",
  "It held  two spaces.",
  "One lunches went well.",
  "It took 22 minute.",
  "Hello {{ day.foods }}.",
  "It was undefined.",
  "The the pear.",
  "We packed : .",
])("the reader of slips finds the one in %j", (text) => {
  expect(languageSlips(text)).not.toEqual([]);
});
