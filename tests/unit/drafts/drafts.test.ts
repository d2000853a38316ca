import { describe, expect, it } from "vitest";
import { day } from "#lib/calendar/index.ts";
import {
  compose,
  DEFAULT_TEMPLATES,
  factsOf,
  tellingOf,
  type DraftKind,
  type EpisodeRecords,
} from "#lib/drafts/index.ts";
import { item, WEEK } from "./week.ts";

function written(records: EpisodeRecords, kind: DraftKind, template = DEFAULT_TEMPLATES[kind]) {
  const composed = compose(tellingOf(records), template, "l1");
  if (!composed.ok) throw new Error(composed.problem.message);
  return composed.value;
}

describe("drafts", () => {
  it("tells what was packed after the shoot, disclosure first, and nothing scrapped as eaten", () => {
    expect(written(WEEK, "lunch-post").text).toBe(
      [
        "We were given the rye rolls for free.",
        "",
        "Wednesday: carrots and rye rolls. On Wednesday rye rolls stepped in for the plums. Our note from the morning: “The bag split”. A first for us: rye rolls. Back after 14 weeks: carrots. It took 22 minutes on Wednesday, empty tin to shut lid.",
        "",
        "Pip finished the carrots and ate half of the rye rolls.",
        "",
        "Pip had this to say about the carrots: “<b>crunchy</b>”.",
      ].join("\n"),
    );
  });

  it.each([
    ["pear", "pear", "pears"],
    ["mandarin orange", "mandarin", "mandarin oranges"],
    ["baby corn", "baby corn", "baby corn"],
    ["rye bread", "slice", "rye bread"],
    ["cucumber slices", "slice", "cucumber slices"],
  ])("speaks of %s in general with the plural it has", (food, countUnit, kind) => {
    const [lunch] = WEEK.lunches;
    const items = [item({ id: "i1", food, countUnit, count: 1, foodId: "new" })];
    const lunches = lunch ? [{ ...lunch, items }] : [];
    const first = factsOf({ ...WEEK, lunches }).find((fact) => fact.kind === "first");
    expect(first?.detail).toMatchObject({ food: { bare: kind } });
  });

  it("says will before the shoot and tells no verdict", () => {
    const [lunch] = WEEK.lunches;
    const planned = lunch && {
      ...lunch,
      isPacked: false,
      items: lunch.items.map((one) => ({ ...one, fate: "planned" as const })),
    };
    const before = { ...WEEK, today: day("2026-03-08"), lunches: planned ? [planned] : [] };
    const { text } = written(before, "lunch-post");
    expect(text).toMatch(/will|plan/u);
    expect(text).not.toMatch(/packed|finished|crunchy|22/u);
  });

  it("tells nothing of a day that passed with its lid open", () => {
    const lunches = WEEK.lunches.map((lunch) => ({ ...lunch, isPacked: false }));
    const kinds = factsOf({ ...WEEK, lunches }).map(({ kind }) => kind);
    expect(kinds).not.toContain("packed");
    expect(kinds).not.toContain("verdict");
  });

  it("lets every sentence that states a fact name its records", () => {
    const { lines, facts } = written(WEEK, "lunch-post");
    const sentences = lines.flat();
    expect(sentences.every((sentence) => sentence.facts.length === 1)).toBe(true);
    const verdict = sentences.find(({ text }) => text.startsWith("Pip finished"));
    const fact = facts.find(({ id }) => id === verdict?.facts[0]);
    expect(fact?.rows).toEqual([
      ["carrots", "all"],
      ["rye rolls", "½"],
    ]);
    expect(fact?.refs.map(({ table }) => table)).toContain("Reaction");
  });

  it("writes the name on screen where a quote holds a private one, and drops what holds a private word", () => {
    const said = (quote: string) =>
      written(
        { ...WEEK, reactions: WEEK.reactions.map((one) => ({ ...one, quote })) },
        "lunch-post",
      ).text;
    expect(said("zoe took my grape")).toContain("“[Pip] took my grape”");
    expect(said("At Lamp Street School they clapped")).not.toContain("clapped");
  });

  it("says an error of a template by its line", () => {
    const lost = compose(tellingOf(WEEK), "{{ opener }}\n{{ nothing }}");
    expect(lost).toEqual({
      ok: false,
      problem: { line: 2, message: "There is nothing called “nothing” here." },
    });
  });
});
