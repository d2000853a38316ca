import Ajv from "ajv";
import { parseHTML } from "linkedom";
import { describe, expect, it, test } from "vitest";
import { WebVTTParser } from "webvtt-parser";
import entities from "webvtt-parser/html-entities.json" with { type: "json" };
import {
  chapterLines,
  chapterProblems,
  chaptersOf,
  chaptersVtt,
  countText,
  isoDuration,
  readingEase,
  readingGrade,
  readRunningTime,
  recipe,
  toHtml,
  toMarkdown,
  videoObject,
  weekList,
} from "#lib/drafts/index.ts";
import { day } from "#lib/calendar/index.ts";
import { readIngredients } from "#lib/catalog/index.ts";
import { CLIP, ITEM_LIST, RECIPE, VIDEO } from "./schema-org.published.ts";

const CHAPTERS = [
  { seconds: 0, title: "Opener" },
  { seconds: 42, title: "Monday: nuts & <bolts> --> here" },
  { seconds: 3725, title: "Closer" },
];

describe("reading ease and grade against published examples", () => {
  // Wikipedia, “Flesch–Kincaid readability tests”: 13 words, 24 syllables, grade 11.3.
  it("give the platypus its grade", () => {
    const counts = { words: 13, sentences: 1, syllables: 24 };
    expect(readingGrade(counts)).toBeCloseTo(11.3, 1);
    // The page counts three syllables in “Australian” and “reptilian”; a dictionary has four.
    const { words, sentences, syllables } = countText(
      "The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.",
    );
    expect({ words, sentences, syllables: syllables - 2 }).toEqual(counts);
  });

  // The same page: the highest ease is 121.22, for sentences of one word of one syllable; the grade by arithmetic.
  it("reach the ends of their scales", () => {
    const counts = countText("Go. Stop. Eat.");
    expect(readingEase(counts)).toBeCloseTo(121.22, 2);
    expect(readingGrade(counts)).toBeCloseTo(-3.4, 2);
  });

  // “The cat sat on the mat.”: 116 on the same page (116.145 by arithmetic).
  it("find the cat easy", () => {
    const counts = countText("The cat sat on the mat.");
    expect(readingEase(counts)).toBeCloseTo(116.145, 3);
    expect(readingGrade(counts)).toBeCloseTo(-1.45, 2);
  });

  it("say nothing of a text without words", () => {
    expect(readingEase(countText("… —"))).toBeUndefined();
  });
});

describe("chapters", () => {
  test.each([
    ["75", 75],
    ["1:15", 75],
    ["1:02:03", 3723],
    ["1:75", undefined],
    ["soon", undefined],
    ["", undefined],
  ])("%j is %s seconds", (text, seconds) => {
    expect(readRunningTime(text)).toBe(seconds);
  });

  it("put short beats into the one before", () => {
    const beats = [
      { title: "Opener", from: 0, seconds: 15 },
      { title: "Breath", from: 15, seconds: 4 },
      { title: "Monday", from: 19, seconds: 30 },
    ];
    expect(chaptersOf(beats)).toEqual([
      { seconds: 0, title: "Opener" },
      { seconds: 19, title: "Monday" },
    ]);
  });

  it("are refused late, falling, few or short", () => {
    const kinds = (seconds: readonly number[]) =>
      chapterProblems(
        seconds.map((one) => ({ seconds: one, title: "x" })),
        100,
      ).map(({ kind }) => kind);
    expect(kinds([0, 20, 40])).toEqual([]);
    expect(kinds([5, 20, 40])).toEqual(["late-start"]);
    expect(kinds([0, 40, 40])).toEqual(["not-ascending"]);
    expect(kinds([0, 20])).toEqual(["too-few"]);
    expect(kinds([0, 20, 95])).toEqual(["too-short"]);
  });

  it("stand one a line, all with hours once one has them", () => {
    expect(chapterLines(CHAPTERS)).toBe(
      "0:00:00 Opener\n0:00:42 Monday: nuts & <bolts> --> here\n1:02:05 Closer",
    );
  });

  it("are WebVTT to a parser of the format, titles to the letter", () => {
    const tree = new WebVTTParser(entities).parse(chaptersVtt(CHAPTERS, 4000), "chapters");
    expect(tree.errors).toEqual([]);
    const cues = tree.cues.map(({ startTime, endTime, tree: { children } }) => [
      startTime,
      endTime,
      children.map(({ value }) => value).join(""),
    ]);
    expect(cues).toEqual([
      [0, 42, "Opener"],
      [42, 3725, "Monday: nuts & <bolts> --> here"],
      [3725, 4000, "Closer"],
    ]);
  });
});

describe("schema.org", () => {
  const ajv = new Ajv({ strict: false });
  ajv.addSchema(CLIP);

  // schema.org/startOffset: offsets are seconds; ISO 8601: ten minutes are PT10M.
  test.each([
    [600, "PT10M"],
    [0, "PT0S"],
    [3723, "PT1H2M3S"],
  ])("%i seconds last %s", (seconds, text) => {
    expect(isoDuration(seconds)).toBe(text);
  });

  it("VideoObject with Clip parts has the published shape", () => {
    const node = videoObject({
      ...{ name: "Night Train", description: "Five lunches.", url: "https://video.example/1" },
      ...{ publishedOn: day("2026-03-20"), totalSeconds: 4000, chapters: CHAPTERS },
    });
    expect(ajv.validate(VIDEO, JSON.parse(JSON.stringify(node)))).toBe(true);
    expect(ajv.validate(VIDEO, { ...node, duration: "ten minutes" })).toBe(false);
  });

  it("ItemList and Recipe have the published shape", () => {
    const list = weekList("Night Train", [{ name: "Monday", description: "a pear" }]);
    expect(ajv.validate(ITEM_LIST, JSON.parse(JSON.stringify(list)))).toBe(true);
    expect(ajv.validate(ITEM_LIST, { ...list, numberOfItems: "one" })).toBe(false);
    const { lines: ingredients, makes } = readIngredients("Makes 12\n480 g white beans\nsalt");
    const steps = [{ name: "Blend", minutes: 8, handsOn: true }];
    const node = recipe({ name: "house bean dip", ingredients, makes, steps }, "Tin Harbour");
    expect(ajv.validate(RECIPE, JSON.parse(JSON.stringify(node)))).toBe(true);
    expect(node).toMatchObject({
      ...{ prepTime: "PT8M", totalTime: "PT8M", recipeYield: "12 servings" },
      recipeIngredient: ["480 g white beans", "salt"],
    });
    const bare = recipe({ name: "dip", ingredients: [], makes: null, steps: [] }, "");
    expect(ajv.validate(RECIPE, JSON.parse(JSON.stringify(bare)))).toBe(true);
    expect(ajv.validate(RECIPE, { ...node, recipeIngredient: "salt" })).toBe(false);
  });
});

describe("Markdown and HTML", () => {
  const text =
    "# Opener\n- a *starred* <b>bun</b> & [more](x)\n1. not a list\nسلام said “`code`”\n\nNext_one_";

  it("let no markup of a record through, by an independent reader of HTML", () => {
    const { document } = parseHTML(`<!doctype html><html><body>${toHtml(text)}</body></html>`);
    const tags = [...document.querySelectorAll("body *")].map(({ tagName }) =>
      tagName.toLowerCase(),
    );
    expect(new Set(tags)).toEqual(new Set(["h1", "ul", "li", "p", "br"]));
    const words = (document.body.textContent ?? "").replace(/\s+/gu, " ");
    expect(words).toContain("a *starred* <b>bun</b> & [more](x)");
    expect(words).toContain("1. not a list");
    expect(words).toContain("سلام said “`code`”");
  });

  it("leave plain sentences as they are", () => {
    expect(toMarkdown("Biscuit ate it all.")).toBe("Biscuit ate it all.");
  });
});
