import { expect, test } from "vitest";
import { stepNotes } from "#app/mise/step-notes.ts";

type Step = Parameters<typeof stepNotes>[0];
const STEP: Step = {
  ...{ minutes: 12, appliance: "none", cook: 0, slack: 0 },
  ...{ isCritical: false, recordings: 0 },
};

test.each<[Partial<Step>, string]>([
  [{ isCritical: true }, "12 min hands on; critical, no slack; usual time"],
  [
    { isCritical: true, slack: 176 },
    "12 min hands on; critical within the evening, which may begin up to 176 min later; usual time",
  ],
  [{ slack: 5 }, "12 min hands on; may begin up to 5 min later; usual time"],
  [{ recordings: 1 }, "12 min hands on; no slack; from 1 record"],
  [{ cook: null, recordings: 3 }, "12 min by itself; no slack; from 3 records"],
])("a step with %j says so without contradicting itself", (change, words) => {
  expect(stepNotes({ ...STEP, ...change }, { cooks: 1, part: "evening" })).toBe(words);
});

test("with two cooks it says whose step it is, and where", () => {
  const step: Step = { ...STEP, cook: 1, appliance: "oven" };
  expect(stepNotes(step, { cooks: 2, part: "morning" })).toBe(
    "12 min cook 2, oven; no slack; usual time",
  );
});
