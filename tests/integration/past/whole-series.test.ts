import { randomUUID } from "node:crypto";
import { existsSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { exportPast } from "#lib/use-cases/past/export-past.ts";
import { bringPast } from "#lib/use-cases/past/bring-past.ts";
import { bringWhole, exportWhole } from "#lib/use-cases/past/whole-series.ts";
import { loadDemo } from "#lib/use-cases/load-demo.ts";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";
import { startSeries } from "#lib/use-cases/start-series.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceThemes } from "#seed/index.ts";
import { templateFolder } from "#tests/support/template-database.ts";
import { testContext } from "#tests/support/test-context.ts";

const copyFile = (): string => path.join(templateFolder, `${randomUUID()}-before.db`);

test("a whole series comes back from its file to the letter, and a copy of the old one is kept", async () => {
  const [from, into] = [testContext(), testContext()];
  await loadDemo(from, tinHarbour, referenceThemes());
  await from.db.food.update({ where: { id: "apple" }, data: { name: "apple of ours" } });
  const text = await exportWhole(from);
  await startSeries(into, StartSeriesInput.parse({ name: "Other" }));
  const copyTo = copyFile();
  expect(await bringWhole(into, text, copyTo)).toEqual({ ok: true, value: undefined });
  expect(await exportWhole(into)).toBe(text);
  expect((await into.db.food.findUnique({ where: { id: "apple" } }))?.name).toBe("apple of ours");
  expect(await into.db.reaction.count()).toBeGreaterThan(1000);
  expect(existsSync(copyTo)).toBe(true);
});

test("the passphrase never leaves, and stays when a series is brought in", async () => {
  const [from, into] = [testContext(), testContext()];
  for (const [context, valueJson] of [
    [from, '"theirs"'],
    [into, '"ours"'],
  ] as const) {
    await startSeries(context, StartSeriesInput.parse({ name: "A" }));
    await context.db.setting.create({ data: { key: "access.passphrase", valueJson } });
  }
  const text = await exportWhole(from);
  expect(text).not.toContain("theirs");
  await bringWhole(into, text, copyFile());
  const kept = await into.db.setting.findUnique({ where: { key: "access.passphrase" } });
  expect(kept?.valueJson).toBe('"ours"');
});

test.each([
  ["no JSON", () => "{", "no-file"],
  ["other JSON", () => '{"noonbook":2}', "no-file"],
  [
    "a newer schema",
    (text: string) => text.replace(/"schema":"[^"]*"/, '"schema":"9999"'),
    "newer",
  ],
  ["a strange table", (text: string) => text.replace('"Child":', '"Robots":'), "unknown"],
  ["a strange column", (text: string) => text.replace('"birthMonth"', '"bread"'), "unknown"],
  [
    "a row that points nowhere",
    (text: string) => text.replace('"apple"', '"apple-x"'),
    "does-not-fit",
  ],
])("%s is refused and nothing is changed", async (_, spoil, kind) => {
  const context = testContext();
  const child = { privateName: "P", onScreenName: "Q" };
  await startSeries(context, StartSeriesInput.parse({ name: "A", children: [child] }));
  const [{ id } = { id: "" }] = await context.db.child.findMany();
  await context.db.avoidance.create({ data: { childId: id, foodId: "apple", severity: "avoid" } });
  const text = await exportWhole(context);
  const outcome = await bringWhole(context, spoil(text), copyFile());
  expect(outcome.ok ? "" : outcome.problem.kind).toBe(kind);
  expect(await exportWhole(context)).toBe(text);
});

test("the demo's past leaves as a file that changes nothing when it is read in again", async () => {
  const context = testContext();
  await loadDemo(context, tinHarbour, referenceThemes());
  const text = await exportPast(context);
  expect(text).not.toContain("Ines");
  expect(text.split("\r\n").length).toBeGreaterThan(2000);
  const again = await bringPast(context, { text, reading: null, choices: {} });
  expect(again.ok).toBe(true);
  if (again.ok) {
    expect(again.value.added).toMatchObject({ weeks: 0, lunches: 0, items: 0, verdicts: 0 });
    expect(again.value.errors).toBe(0);
  }
  expect(await exportPast(context)).toBe(text);
});
