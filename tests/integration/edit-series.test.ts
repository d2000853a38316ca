import { expect, test } from "vitest";
import { editSeries, loadBible } from "#lib/use-cases/edit-series.ts";
import { EditSeriesInput } from "#lib/use-cases/edit-series.input.ts";
import { startSeries } from "#lib/use-cases/start-series.ts";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";
import { testContext } from "../support/test-context.ts";

const sheet = { name: "B", departure: "07:30", wordsPerMinute: 140, signOn: "Hi", signOff: "Bye" };

test("the sheet is read back as saved", async () => {
  const context = testContext();
  await startSeries(context, StartSeriesInput.parse({ name: "A" }));
  expect((await editSeries(context, EditSeriesInput.parse(sheet))).ok).toBe(true);
  expect(await loadBible(context)).toEqual(sheet);
});

test("before there is a series nothing is written", async () => {
  const context = testContext();
  const before = await context.db.setting.count();
  expect((await editSeries(context, EditSeriesInput.parse(sheet))).ok).toBe(false);
  expect(await context.db.setting.count()).toBe(before);
});

test("a negative rate is refused at its field", () => {
  const parsed = EditSeriesInput.safeParse({ ...sheet, wordsPerMinute: -1 });
  expect(parsed.error?.issues.map((problem) => problem.path)).toEqual([["wordsPerMinute"]]);
});
