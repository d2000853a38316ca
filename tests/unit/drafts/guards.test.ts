import { describe, expect, it } from "vitest";
import { day } from "#lib/calendar/index.ts";
import {
  applyFix,
  checksOf,
  compose,
  DEFAULT_TEMPLATES,
  factsOf,
  ownLines,
  tellingOf,
  type Check,
  type GuardGround,
} from "#lib/drafts/index.ts";
import { WEEK } from "./week.ts";

const GROUND: GuardGround = {
  ...{ kind: "lunch-post", today: WEEK.today, facts: factsOf(WEEK), children: WEEK.children },
  ...{ owed: ["We were given the rye rolls for free."], privateWords: ["Lamp Street School"] },
  ...{ surprise: WEEK.surprise, revealOn: WEEK.revealOn },
  ...{ foods: ["carrots", "plums", "rye rolls", "gluten-free bread"], scrapped: ["plums"] },
  times: null,
  limits: { titleMax: 40, descriptionMax: 4000, firstLinesMax: 150 },
};
const DISCLOSED = "We were given the rye rolls for free.\n";

function broken(body: string, change: Partial<GuardGround> = {}): readonly Check[] {
  const lines = ownLines(body, []);
  return checksOf(lines, { ...GROUND, ...change }).filter(({ findings }) => findings.length > 0);
}

describe("guards", () => {
  it("let a text that follows from the records pass", () => {
    const composed = compose(tellingOf(WEEK), DEFAULT_TEMPLATES["lunch-post"], "l1");
    if (!composed.ok) throw new Error(composed.problem.message);
    const lines = ownLines(composed.value.text, composed.value.lines);
    expect(checksOf(lines, GROUND).flatMap(({ findings }) => findings)).toEqual([]);
  });

  it.each([
    ["Zoë ate it.", "names"],
    ["ZOE ate it.", "names"],
    ["Z\u200Boe\u0301’s tin.", "names"],
    ["Filmed at Lamp Street School.", "places"],
    ["There is a riddle in a boat of paper.", "surprise"],
    ["It is safe to eat.", "claims"],
    ["A nut-free lunch!", "claims"],
    ["So healthy.", "claims"],
    ["See you on 20 March.", "dates"],
    ["More of it tomorrow.", "dates"],
    ["The link is below.", "links"],
    ["Pip loved it.", "records"],
    ["We packed it on Wednesday.", "records"],
    ["The carrots went first.", "records"],
  ])("stop at %j: %s", (text, kind) => {
    expect(broken(DISCLOSED + text).map((check) => check.kind)).toContain(kind);
  });

  it.each([
    ["2026-03-12", ["dates"]],
    ["2026-03-14", []],
  ])("on %s a child’s “tomorrow” of 11 March is judged by its own day: %j", (on, kinds) => {
    const reactions = WEEK.reactions.map((one) => ({ ...one, quote: "More tomorrow." }));
    const told = tellingOf({ ...WEEK, reactions, today: day(on) });
    const composed = compose(told, DEFAULT_TEMPLATES["lunch-post"], "l1");
    if (!composed.ok) throw new Error(composed.problem.message);
    const lines = ownLines(composed.value.text, composed.value.lines);
    const ground = { ...GROUND, facts: told.facts, today: day(on) };
    const found = checksOf(lines, ground).filter(({ findings }) => findings.length > 0);
    expect(found.map(({ kind }) => kind)).toEqual(kinds);
  });

  it.each([
    "Zoetropes are fun.",
    "Feel free to ask.",
    "We like gluten-free bread.",
    "On 9 March it rained.",
    "The link is below: https://video.example/1",
    "The paper cups came back.",
  ])("leave %j alone", (text) => {
    const kinds = broken(DISCLOSED + text, { foods: ["gluten-free bread"] }).map(
      ({ kind }) => kind,
    );
    expect(kinds.filter((kind) => kind !== "records")).toEqual([]);
  });

  it("want the disclosure at the start, and put it there (16 CFR 255.5)", () => {
    const late = `Hello there. ${DISCLOSED}`;
    const [check] = broken(late);
    expect(check?.kind).toBe("disclosure");
    const [fix] = check?.findings[0]?.fixes ?? [];
    if (!fix) throw new Error("a fix was expected");
    const mended = applyFix(ownLines(late, []), fix);
    expect(mended).toBe("We were given the rye rolls for free.\nHello there.");
    expect(broken(mended)).toEqual([]);
  });

  it("want it spoken in the outline, not only shown", () => {
    const outline = "# Opener\nPicture: We were given the rye rolls for free.\nSound: Hello.";
    const [check] = broken(outline, { kind: "outline" });
    const [fix] = check?.findings[0]?.fixes ?? [];
    if (!fix) throw new Error("a fix was expected");
    expect(applyFix(ownLines(outline, []), fix)).toContain(
      "Sound: We were given the rye rolls for free. Hello.",
    );
  });

  it("keep the surprise only until its day", () => {
    const text = `${DISCLOSED}A paper boat with a riddle!`;
    expect(broken(text).map(({ kind }) => kind)).toContain("surprise");
    expect(broken(text, { today: day("2026-03-20") })).toEqual([]);
  });

  it("write the on-screen name at one press", () => {
    const body = `${DISCLOSED}Then Zoe laughed.`;
    const [check] = broken(body);
    const [fix] = check?.findings[0]?.fixes ?? [];
    if (!fix) throw new Error("a fix was expected");
    expect(applyFix(ownLines(body, []), fix)).toBe(`${DISCLOSED}Then Pip laughed.`);
  });

  it("count letters as a reader does, and titles one by one", () => {
    const titles = `${"é".normalize("NFD").repeat(40)}\n${"x".repeat(41)}`;
    const [check] = broken(titles, { kind: "titles" });
    expect(check?.findings.map(({ text }) => text)).toEqual([
      `“${"x".repeat(41)}” has 41 letters, 1 too many.`,
    ]);
  });

  // Common practice of video hosts, from memory: first at 0:00, ascending, three or more, ten seconds each.
  const MARKED = [
    { seconds: 0, title: "Opener" },
    { seconds: 60, title: "Monday" },
    { seconds: 270, title: "Closer" },
  ];
  const TIMES = { chapters: [], totalSeconds: 300, shares: [], namesShare: false };
  const BODY = `${DISCLOSED}Hello there.`;
  const chapters = (body: string, times: Partial<NonNullable<GuardGround["times"]>> = {}) =>
    broken(body, { kind: "description", times: { ...TIMES, ...times } }).find(
      ({ kind }) => kind === "chapters",
    );
  const mend = (body: string, check: Check | undefined, label: string): string => {
    const fix = check?.findings.flatMap(({ fixes }) => fixes).find((one) => one.label === label);
    if (!fix) throw new Error(`no fix “${label}”`);
    return applyFix(ownLines(body, []), fix);
  };

  it.each([
    ["0:05 Opener\n1:00 Monday\n4:30 Closer", ["The first chapter, “Opener”, must begin at 0:00."]],
    ["0:00 Opener\n4:30 Closer", ["There must be 3 chapters or more."]],
    [
      "0:00 Opener\n2:00 Monday\n1:00 Closer",
      ["What follows “Monday” must begin later than it does."],
    ],
    [
      "0:00 Opener\n1:00 Monday\n1:09 Closer",
      ["“Monday” is shorter than 10 seconds: give it more, or leave it out."],
    ],
    [
      "0:00 Opener\n1:00 Monday\n4:51 Closer",
      ["“Closer” is shorter than 10 seconds: give it more, or leave it out."],
    ],
    ["0:00 Opener\n1:00 Monday\n4:50 Closer", []],
    ["7:40 and we were out of the door.", []],
  ])("hold a description back over chapters that cannot be taken up: %j", (text, told) => {
    const check = chapters(`${BODY}\n${text}`);
    expect(check?.findings.map((finding) => finding.text) ?? []).toEqual(told);
  });

  it("begin the first chapter at 0:00, write the marked ones, or take them out, at one press", () => {
    const late = `${BODY}\n0:05 Opener\n1:00 Monday\n4:30 Closer\nGoodbye.`;
    expect(mend(late, chapters(late), "Begin it at 0:00")).toBe(late.replace("0:05", "0:00"));
    const check = chapters(late, { chapters: MARKED });
    const written = mend(late, check, "Write the marked chapters");
    expect(written).toBe(late.replace("0:05", "0:00"));
    expect(chapters(written, { chapters: MARKED })).toBeUndefined();
    expect(mend(late, check, "Take the chapters out")).toBe(`${BODY}\nGoodbye.`);
  });

  it("look at the marked chapters of a description that holds none, and at no other text", () => {
    const marked = MARKED.slice(0, 2);
    expect(chapters(BODY, { chapters: MARKED })).toBeUndefined();
    const check = chapters(BODY, { chapters: marked });
    expect(check?.findings.map(({ text, fixes }) => [text, fixes])).toEqual([
      ["There must be 3 chapters or more.", []],
    ]);
    expect(broken(`${BODY}\n0:00 A\n0:01 B`).map(({ kind }) => kind)).not.toContain("chapters");
  });

  it("count a child’s time on screen against the share the note names, without judging", () => {
    const share = { name: "Pip", seconds: 120, percent: 40 };
    const screen = (beyond: number | null) =>
      broken(BODY, {
        kind: "description",
        times: { ...TIMES, namesShare: true, shares: [{ ...share, beyond }] },
      }).find(({ kind }) => kind === "screen");
    expect(screen(null)).toBeUndefined();
    expect(screen(30)?.findings.map(({ text }) => text)).toEqual([
      "Pip is on screen for 40 % of the running time; your note names 30 %. A count, not legal advice.",
    ]);
    expect(screen(30)?.level).toBe("look");
  });
});
