import { expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import { readEpisode, readSettings, type LunchRecord } from "#lib/db/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { keepFinding } from "#lib/use-cases/keep-finding.ts";
import { loadDemo } from "#lib/use-cases/load-demo.ts";
import { loadSlate } from "#lib/use-cases/load-slate.ts";
import { readChecks, type FindingView } from "#lib/use-cases/read-checks.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceThemes } from "#seed/index.ts";
import { testContext } from "#tests/support/test-context.ts";

const TUESDAY = day("2026-03-17");

async function demo(): Promise<Context> {
  const context = testContext();
  await loadDemo(context, tinHarbour, referenceThemes());
  return context;
}

async function lunchOn({ db }: Context): Promise<LunchRecord> {
  const lunch = (await readEpisode(db, day("2026-03-16")))?.lunches.find(
    ({ date }) => date === TUESDAY,
  );
  if (!lunch) throw new Error("The demo has no lunch on that Tuesday.");
  return lunch;
}

async function findingsOn(context: Context): Promise<readonly FindingView[]> {
  const lunch = await lunchOn(context);
  return (await readChecks(context.db, [lunch], await readSettings(context.db))).inFull(lunch, []);
}

test("a school rule may be kept with a note, which the slate then respects, and be taken up again", async () => {
  const context = await demo();
  const [first] = await findingsOn(context);
  expect(first).toMatchObject({ kind: "school", level: "stop", mayKeep: true });
  expect(first?.standIns?.names.length).toBeGreaterThan(0);
  const { id: lunchId } = await lunchOn(context);
  const key = first?.key ?? "";
  const broken = async () =>
    (await loadSlate(context, TUESDAY)).weeks
      .flatMap(({ days }) => days)
      .find(({ date }) => date === TUESDAY)?.lunch?.broken?.short;
  expect(await broken()).toBe("almonds: school rule");

  expect(await keepFinding(context, { lunchId, key, note: "asked the school" })).toMatchObject({
    ok: true,
  });
  expect((await findingsOn(context)).find((one) => one.key === key)?.keptBecause).toBe(
    "asked the school",
  );
  expect(await broken()).toBeUndefined();
  expect(await keepFinding(context, { lunchId, key, note: null })).toMatchObject({ ok: true });
  expect(await broken()).toBe("almonds: school rule");
});

test("a note is refused against an allergy, a recall, and what is settled; nothing is written", async () => {
  const context = await demo();
  const { db } = context;
  const { id: lunchId } = await lunchOn(context);
  await db.avoidance.create({
    data: { childId: "biscuit", allergen: "tree-nut", severity: "severe" },
  });
  await db.food.update({
    where: { id: "salmon" },
    data: { recalledAt: context.now, recallNote: "a notice at the shop" },
  });
  const findings = await findingsOn(context);
  const fixed = findings.filter(({ mayKeep }) => !mayKeep);
  expect(fixed.map(({ kind }) => kind)).toEqual(expect.arrayContaining(["recall", "allergen"]));
  for (const { key } of fixed)
    expect(await keepFinding(context, { lunchId, key, note: "I know" })).toMatchObject({
      problem: { kind: "may-not" },
    });
  expect(
    await keepFinding(context, { lunchId, key: "school:no such rule:x", note: "I know" }),
  ).toMatchObject({ problem: { kind: "settled" } });
  expect(await keepFinding(context, { lunchId: "none", key: "x", note: "y" })).toMatchObject({
    problem: { kind: "gone" },
  });
  expect(await db.waiver.count()).toBe(0);
  // A note that got there by another way holds nothing either.
  const [recall] = fixed;
  await db.waiver.create({ data: { lunchId, key: recall?.key ?? "", note: "slipped in" } });
  expect(
    (await findingsOn(context)).find(({ key }) => key === recall?.key)?.keptBecause,
  ).toBeNull();
});

test("a series without records says what it cannot check", async () => {
  const context = testContext();
  await context.db.child.create({ data: { privateName: "Ines", onScreenName: "Biscuit" } });
  const unset = async ({ db }: Context) => (await readChecks(db, [], await readSettings(db))).unset;
  expect(await unset(context)).toHaveLength(3);
  expect(await unset(await demo())).toEqual([]);
});
