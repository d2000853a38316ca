import { afterAll, expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import { loadDemo } from "#lib/use-cases/load-demo.ts";
import { changeProposal } from "#lib/use-cases/proposal/change-proposal.ts";
import { readDesk } from "#lib/use-cases/proposal/desk.ts";
import { improveProposal } from "#lib/use-cases/proposal/improve-proposal.ts";
import { openWeeks } from "#lib/use-cases/proposal/open-weeks.ts";
import { endWaiting } from "#lib/use-cases/solver/worker-pool.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceThemes } from "#seed/index.ts";
import { testContext } from "#tests/support/test-context.ts";

afterAll(endWaiting);

const MONTH = day("2026-05-01");

async function proposed() {
  const context = testContext("2026-03-11");
  await loadDemo(context, tinHarbour, referenceThemes());
  await changeProposal(context, { step: "propose", month: MONTH, scope: "rest", sliders: {} });
  const mondays = await openWeeks(context, MONTH);
  const desk = async () => (await readDesk(context.db, mondays, "open"))?.desk;
  const first = await desk();
  if (!first) throw new Error("nothing was proposed");
  return { context, first, desk };
}

test("a fresh proposal is bettered in one step for undo, and is not fresh any more", async () => {
  const { context, first, desk } = await proposed();
  expect(first.proof.isFresh).toBe(true);
  const stop = new AbortController();
  for await (const { points } of improveProposal(context, MONTH, stop.signal)) {
    if (points > first.proof.points) stop.abort();
  }
  const better = await desk();
  expect(better?.proof.points).toBeGreaterThan(first.proof.points);
  expect(better?.proof).toMatchObject({ broken: 0, isFresh: false });
  expect(better?.before.map(({ plan }) => plan)).toEqual([first.plan]);
  await changeProposal(context, { step: "undo", month: MONTH });
  expect((await desk())?.plan).toEqual(first.plan);
  expect((await desk())?.proof.isFresh).toBe(false);
});

test("what the user changes meanwhile stays as it is", async () => {
  const { context, first, desk } = await proposed();
  const [lunch] = first.plan.weeks[0]?.lunches ?? [];
  const itemId = lunch?.itemIds[0];
  if (!lunch || itemId === undefined) throw new Error("an empty lunch was proposed");
  const stop = new AbortController();
  let hasChanged = false;
  for await (const { points } of improveProposal(context, MONTH, stop.signal)) {
    if (!hasChanged) {
      await changeProposal(context, { step: "lock", month: MONTH, date: lunch.date, itemId });
      hasChanged = true;
    }
    if (points > first.proof.points) stop.abort();
  }
  const now = await desk();
  expect(now?.plan).toEqual(first.plan);
  expect(now?.wishes.locks).toEqual([{ date: lunch.date, itemId }]);
});
