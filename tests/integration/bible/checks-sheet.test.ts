import { expect, test } from "vitest";
import { readSettings } from "#lib/db/index.ts";
import { USUAL_CARRYING } from "#lib/safety/index.ts";
import { loadChecksSheet, saveChecksSheet } from "#lib/use-cases/bible/checks-sheet.ts";
import { ChecksInput } from "#lib/use-cases/bible/checks-sheet.input.ts";
import { testContext } from "#tests/support/test-context.ts";

const NO_READING = { waterMl: "", startC: "", hours: "", readC: "", roomC: "" };
const READING = { waterMl: "350", startC: "92", hours: "5", readC: "68,5", roomC: "20" };

test("the sheet opens with the usual, saves as a whole and opens as saved; a second tab is told", async () => {
  const context = testContext();
  const opened = await loadChecksSheet(context);
  expect(opened).toMatchObject({ bag: "soft", packs: 2, jarReading: NO_READING });
  expect((await readSettings(context.db)).carrying).toBeNull();

  const climate = Array.from({ length: 12 }, (_, month) => String(month));
  const typed = { ...opened, bag: "hard", fridgeC: "3,5", jarReading: READING, climate } as const;
  const input = ChecksInput.parse({ ...typed, balanceScheme: "plate" });
  expect(await saveChecksSheet(context, input)).toMatchObject({ ok: true });
  const { carrying, climateC, balanceScheme } = await readSettings(context.db);
  expect(carrying).toEqual({
    ...USUAL_CARRYING,
    ...{ bag: "hard", fridgeC: 3.5 },
    jarReading: { waterMl: 350, startC: 92, hours: 5, readC: 68.5, roomC: 20 },
  });
  expect([climateC?.[11], balanceScheme]).toEqual([11, "plate"]);
  expect(await saveChecksSheet(context, input)).toMatchObject({
    problem: { kind: "changed-elsewhere" },
  });
  const again = await loadChecksSheet(context);
  expect(again.jarReading.readC).toBe("68.5");
  expect(ChecksInput.safeParse(again).success).toBe(true);
});

test.each([
  ["a reading half filled", { jarReading: { ...READING, hours: "" } }, "jarReading.hours"],
  [
    "a reading that no cooling gives",
    { jarReading: { ...READING, readC: "95" } },
    "jarReading.readC",
  ],
  ["eleven months", { climate: [...Array.from({ length: 11 }, () => "9"), ""] }, "climate.11"],
  ["a word for a number", { fridgeC: "cold" }, "fridgeC"],
  ["seven packs", { packs: 7 }, "packs"],
])("%s is told beside its field", async (_, change, field) => {
  const opened = await loadChecksSheet(testContext());
  const parsed = ChecksInput.safeParse({ ...opened, ...change });
  expect(parsed.error?.issues.map(({ path }) => path.join("."))).toEqual([field]);
});
