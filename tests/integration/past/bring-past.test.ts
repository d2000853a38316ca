import { expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import { readEpisodes } from "#lib/db/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { stageOf } from "#lib/use-cases/episode-stage.ts";
import { bringPast, lookAtPast } from "#lib/use-cases/past/bring-past.ts";
import { exportPast } from "#lib/use-cases/past/export-past.ts";
import { LEAVE_OUT, NEW_FOOD, type PastInput } from "#lib/use-cases/past/past.input.ts";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";
import { startSeries } from "#lib/use-cases/start-series.ts";
import { testContext } from "#tests/support/test-context.ts";

const CHILDREN = [
  { privateName: "Ines", onScreenName: "Biscuit" },
  { privateName: "Tomas", onScreenName: "Pepper" },
];
const file = (text: string, change: Partial<PastInput> = {}): PastInput => ({
  ...{ text, reading: null, choices: {} },
  ...change,
});
async function started(): Promise<Context> {
  const context = testContext();
  await startSeries(context, StartSeriesInput.parse({ name: "A", children: CHILDREN }));
  return context;
}
const countAll = async ({ db }: Context): Promise<readonly number[]> =>
  Promise.all([
    db.episode.count(),
    db.lunch.count(),
    db.lunchItem.count(),
    db.reaction.count(),
    db.theme.count(),
    db.shop.count(),
    db.food.count(),
    db.foodAlias.count(),
  ]);

const PAST = [
  "When;Kid;What;How much;Store;Said;Ate;Theme",
  '03.02.2026;Biscuit;cucumber slices;½ cup;Quay;"crunchy; ""cold""";75%;Night Train',
  "03.02.2026;tomas;cucumber slices;½ cup;Quay;;none;Night Train",
  "03.02.2026;;hummus;30 g;;;;",
  "13.02.2026;Pepper;2 clementines;;;;all;Crumbs and Letters",
].join("\n");

test("a file with its own columns, delimiter and dates becomes weeks that were shot", async () => {
  const context = await started();
  const report = await lookAtPast(context, file(PAST));
  expect(report).toMatchObject({
    reading: { delimiter: ";", dates: "dmy", hasHeader: true, columns: { date: 0, item: 2 } },
    lineCount: 4,
    errors: 0,
    added: { weeks: 2, lunches: 2, items: 3, verdicts: 3, shops: ["Quay"], foods: [] },
  });
  expect(report.added.themes).toEqual(["Crumbs and Letters"]);
  expect(await context.db.episode.count()).toBe(0);

  expect((await bringPast(context, file(PAST))).ok).toBe(true);
  const episodes = await readEpisodes(context.db, day("2026-02-01"), day("2026-02-28"));
  expect(
    episodes.map((episode) => [episode.number, episode.theme?.name, stageOf(episode)]),
  ).toEqual([
    [1, "Night Train", "shot"],
    [2, "Crumbs and Letters", "shot"],
  ]);
  const items = episodes.flatMap(({ lunches }) => lunches.flatMap((lunch) => lunch.items));
  expect(items.map(({ amount, unit, fate }) => [amount, unit, fate])).toEqual([
    [0.5, "cup", "packed"],
    [30, "g", "packed"],
    [2, "each", "packed"],
  ]);
  const verdicts = await context.db.reaction.findMany({
    orderBy: [{ childId: "asc" }, { eaten: "asc" }],
    select: { eaten: true, quote: true, child: { select: { onScreenName: true } } },
  });
  expect(
    verdicts.map(({ eaten, quote, child }) => [child.onScreenName, eaten, quote]).sort(),
  ).toEqual([
    ["Biscuit", 3, 'crunchy; "cold"'],
    ["Pepper", 0, ""],
    ["Pepper", 4, ""],
  ]);
});

test("a second time the same file changes nothing", async () => {
  const context = await started();
  await bringPast(context, file(PAST));
  const before = [await countAll(context), await exportPast(context)];
  const again = await bringPast(context, file(PAST));
  expect(again.ok && again.value.added).toEqual({
    ...{ weeks: 0, lunches: 0, items: 0, verdicts: 0, themes: [], shops: [], foods: [] },
  });
  expect(again.ok && again.value.known).toBe(4);
  expect([await countAll(context), await exportPast(context)]).toEqual(before);
});

test.each([
  ["no date", "date,item\n,hummus", 2, "is not a date"],
  ["a date that is none", "date,item\n2026-02-30,hummus", 2, "is not a date"],
  ["a day to come", "date,item\n2026-03-12,hummus", 2, "still to come"],
  ["no item", "date,item\n2026-02-03, ", 2, "No item is named"],
  ["an unknown food", "date,item\n2026-02-03,qqzzx", 2, "No food of the Larder"],
  [
    "an unknown child",
    "date,item,child\n2026-02-03,hummus,Nobody",
    2,
    "No child of the series bible",
  ],
  ["a verdict of nobody", "date,item,eaten\n2026-02-03,hummus,all", 2, "no child is named"],
  ["an amount in words", "date,item,amount\n2026-02-03,hummus,some", 2, "is not an amount"],
  ["a part that is none", "date,item,part\n2026-02-03,hummus,roof", 2, "is no part of a lunch"],
  ["five quarters", "date,item,child,eaten\n2026-02-03,hummus,Biscuit,5", 2, "how much was eaten"],
  ["an unknown trick", "date,item,trick\n2026-02-03,hummus,levitation", 2, "No trick"],
  ["too many cells", "date,item\n2026-02-03,hummus,with,dip", 2, "has 4 cells"],
  [
    "two themes in a week",
    "date,item,theme\n2026-02-03,hummus,One\n2026-02-04,hummus,Two",
    3,
    "said on line 2",
  ],
  [
    "two verdicts on one item",
    "date,item,child,eaten\n2026-02-03,hummus,Biscuit,all\n2026-02-03,hummus,Biscuit,none",
    3,
    "Line 2 says otherwise",
  ],
  ["a quotation mark astray", 'date,item\n2026-02-03,hum"mus', 2, "quotation mark"],
  ["no column of dates", "item\nhummus", 1, "which column holds the date"],
])(
  "%s is an error of its line, and then nothing at all is written",
  async (_, text, line, words) => {
    const context = await started();
    const before = await countAll(context);
    const withGood = text.startsWith("item") ? text : `${text}\n2026-02-05,cucumber`;
    const report = await lookAtPast(context, file(withGood));
    const errors = report.notes.filter(({ kind }) => kind === "error");
    expect(errors.map((note) => note.line)).toEqual([line]);
    expect(errors[0]?.message).toContain(words);
    expect(await bringPast(context, file(withGood))).toEqual({
      ok: false,
      problem: { kind: "has-errors" },
    });
    expect(await countAll(context)).toEqual(before);
  },
);

test("what is not sure is chosen by the user, and known the next time", async () => {
  const context = await started();
  const text = "date,item\n2026-02-03,nan's moon pie\n2026-02-04,orange hoops\n2026-02-04,skip me";
  const open = await lookAtPast(context, file(text));
  expect(open.errors).toBe(3);
  const choices = {
    "nan's moon pie": NEW_FOOD,
    "orange hoops": "carrot-sticks",
    "skip me": LEAVE_OUT,
  };
  const known = await context.db.food.count({ where: { id: "carrot-sticks" } });
  expect(known).toBe(1);
  expect((await bringPast(context, file(text, { choices }))).ok).toBe(true);
  const pie = await context.db.food.findFirst({ where: { name: "nan's moon pie" } });
  // Nobody read its label: it may hold anything.
  expect(JSON.parse(pie?.maybeJson ?? "[]")).toHaveLength(18);
  const anew = file(text, { choices: { "skip me": LEAVE_OUT } });
  for (const again of [anew, file(text, { choices })]) {
    const report = await lookAtPast(context, again);
    expect(report).toMatchObject({ errors: 0, known: 2, added: { items: 0, foods: [] } });
  }
});

test("a lunch that is planned and never packed is not overwritten", async () => {
  const context = await started();
  await context.db.episode.create({
    data: {
      ...{ number: 1, weekOf: "2026-02-02" },
      lunches: {
        create: {
          date: "2026-02-03",
          items: { create: { foodId: "hummus", part: "dip", amount: 30 } },
        },
      },
    },
  });
  const report = await lookAtPast(context, file("date,item\n2026-02-03,cucumber"));
  expect(report.notes.map(({ kind }) => kind)).toContain("error");
  expect(report.notes.map(({ message }) => message).join()).toContain("lid was never shut");
});

test("5,000 lines come in whole, each phrase looked up once", async () => {
  const context = await started();
  const foods = await context.db.food.findMany({ take: 100, orderBy: { id: "asc" } });
  const rows = Array.from({ length: 5000 }, (_, index) => {
    const date = new Date(Date.UTC(2016, 0, 4 + Math.floor(index / 5))).toISOString().slice(0, 10);
    return `${date},"${foods[index % 100]?.name ?? ""}",Biscuit,${["none", "half", "all"][index % 3] ?? ""}`;
  });
  const text = ["date,item,child,eaten", ...rows].join("\n");
  const brought = await bringPast(context, file(text));
  expect(brought.ok && brought.value.added).toMatchObject({
    lunches: 1000,
    items: 5000,
    verdicts: 5000,
  });
  expect(brought.ok && brought.value.matches.length).toBe(100);
});
