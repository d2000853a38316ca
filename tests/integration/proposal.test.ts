import { expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import { changeProposal } from "#lib/use-cases/proposal/change-proposal.ts";
import { ChangeProposalInput, stepOfForm } from "#lib/use-cases/proposal/change-proposal.input.ts";
import { readDesk } from "#lib/use-cases/proposal/desk.ts";
import { openWeeks } from "#lib/use-cases/proposal/open-weeks.ts";
import { loadDemo } from "#lib/use-cases/load-demo.ts";
import { pencilWeek } from "#lib/use-cases/pencil-week.ts";
import { planProblemFor } from "#lib/use-cases/plan-problem.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceThemes } from "#seed/index.ts";
import { loadProposal, type ProposalView } from "#lib/use-cases/proposal/load-proposal.ts";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";
import { startSeries } from "#lib/use-cases/start-series.ts";
import { testContext } from "#tests/support/test-context.ts";

const month = day("2026-03-01");
const CHILD = { privateName: "Tomas", onScreenName: "Pepper", allergens: ["sesame"] };

async function desk() {
  const context = testContext("2026-02-20");
  await startSeries(context, StartSeriesInput.parse({ name: "Boxes", children: [CHILD] }));
  const step = (input: Omit<ChangeProposalInput, "month"> | { readonly step: string }) =>
    changeProposal(context, ChangeProposalInput.parse({ month, ...input }));
  const look = async (): Promise<NonNullable<ProposalView["shown"]>> => {
    const { shown } = await loadProposal(context, month, {});
    if (!shown) throw new Error("no proposal");
    return shown;
  };
  return { context, step, look };
}

const PROPOSE = { step: "propose", scope: "rest", sliders: {} } as const;

test("a proposal is shown whole and nothing is written until it is taken", async () => {
  const { context, step, look } = await desk();
  expect(await step({ step: "take" })).toMatchObject({ problem: { kind: "no-proposal" } });
  await step(PROPOSE);
  const shown = await look();
  expect(shown.weeks).toHaveLength(4);
  expect(shown.proof.broken).toBe(0);
  expect(await context.db.episode.count()).toBe(0);
  expect(await step({ step: "take" })).toEqual({ ok: true, value: { taken: 4 } });
  expect(await context.db.episode.count()).toBe(4);
  const written = await context.db.lunchItem.count();
  const planned = shown.weeks.flatMap((week) => week.lunches.flatMap((lunch) => lunch.items));
  expect(written).toBe(planned.length);
});

test("what is taken is written with its tricks and the shops of the week", async () => {
  const context = testContext("2026-03-11");
  await loadDemo(context, tinHarbour, referenceThemes());
  const june = day("2026-06-01");
  const step = (input: { readonly step: string }) =>
    changeProposal(context, ChangeProposalInput.parse({ month: june, ...input }));
  await step({ ...PROPOSE, sliders: { theme: 3 } } as never);
  const mondays = await openWeeks(context, june);
  const problem = await planProblemFor(context.db, mondays, context.today);
  const desk = await readDesk(context.db, mondays, "open");
  expect(await step({ step: "take" })).toMatchObject({ ok: true });
  const itemOf = new Map(problem.items.map((item) => [item.id, item]));
  const lunches = desk?.desk.plan.weeks.flatMap((week) => week.lunches) ?? [];
  let dressed = 0;
  for (const lunch of lunches) {
    const rows = await context.db.lunchItem.findMany({
      where: { lunch: { date: lunch.date } },
      orderBy: { position: "asc" },
      include: { tricks: true },
    });
    const planned = lunch.itemIds.map((id) => itemOf.get(id));
    expect(rows.map(({ foodId }) => foodId)).toEqual(planned.map((item) => item?.foodId));
    rows.forEach(({ tricks, shopId }, place) => {
      const { trickIds = [], shopIds = [] } = planned[place] ?? {};
      expect(tricks.map(({ trickId }) => trickId)).toEqual(trickIds);
      expect(shopIds.length === 0 ? shopId === null : shopIds.includes(shopId ?? "")).toBe(true);
      dressed += tricks.length;
    });
  }
  expect(dressed).toBeGreaterThan(0);
});

test("a week pencilled, a day off or a step in another tab refuses the whole plan", async () => {
  const { context, step, look } = await desk();
  await step(PROPOSE);
  const { stamp } = await look();
  const refusal = { ok: false, problem: { kind: "changed-elsewhere" } };
  await step({ step: "beside" });
  await step({ ...PROPOSE, sliders: { money: 3 } } as never);
  expect(await step({ step: "take", stamp } as never)).toEqual(refusal);
  await step({ step: "undo" });
  const off = await context.db.dayOff.create({
    data: { from: "2026-03-25", to: "2026-03-25", label: "Museum day" },
  });
  expect(await step({ step: "take", stamp } as never)).toMatchObject({ ok: false });
  expect(await context.db.episode.count()).toBe(0);
  await context.db.dayOff.delete({ where: { id: off.id } });
  const monday = day("2026-03-16");
  await pencilWeek(context, { monday, themeId: "", title: "Mine" });
  expect(await step({ step: "take", stamp } as never)).toEqual(refusal);
  expect(await context.db.episode.count()).toBe(1);
  expect(await context.db.lunchItem.count()).toBe(0);
});

test("a plan that fails in its last week leaves none of its weeks behind", async () => {
  const { context, step } = await desk();
  await step(PROPOSE);
  // The last week's lunch days are taken by a stray lunch, so that writing it must fail.
  const stray = await context.db.episode.create({ data: { number: 9, weekOf: "2027-01-04" } });
  await context.db.lunch.create({ data: { episodeId: stray.id, date: "2026-03-27" } });
  await expect(step({ step: "take" })).rejects.toThrow();
  expect(await context.db.episode.count()).toBe(1);
  expect(await context.db.change.count({ where: { scope: "slate" } })).toBe(0);
  expect(await context.db.proposal.count({ where: { state: "open" } })).toBe(1);
});

test("what is locked or outside the asked lunch stays; undo brings the last plan back", async () => {
  const { step, look } = await desk();
  await step(PROPOSE);
  const first = await look();
  const date = first.weeks[1]?.lunches[2]?.date;
  const locked = first.weeks[0]?.lunches[0];
  const itemId = locked?.items[0]?.id;
  if (!date || !locked || !itemId) throw new Error("an empty proposal");
  await step({ step: "propose", scope: "lunch", date, sliders: {} } as never);
  const second = await look();
  const others = (shown: typeof first) =>
    shown.weeks.flatMap((week) => week.lunches).filter((lunch) => lunch.date !== date);
  expect(others(second)).toEqual(others(first));

  await step({ step: "lock", date: locked.date, itemId } as never);
  await step({ ...PROPOSE, sliders: { money: 3, liked: 0 } } as never);
  const third = await look();
  expect(third.weeks[0]?.lunches[0]?.items.map(({ id }) => id)).toContain(itemId);
  for (let back = 0; back < 3; back += 1) await step({ step: "undo" });
  expect((await look()).weeks).toEqual(first.weeks);
  expect(await step({ step: "undo" })).toMatchObject({ problem: { kind: "nothing-to-undo" } });
});

test("a stand-in takes the place it is offered for; a food kept out stays out", async () => {
  const { context, step, look } = await desk();
  await step(PROPOSE);
  const first = await look();
  const lunch = first.weeks[0]?.lunches[0];
  const item = lunch?.items[0];
  if (!lunch || !item) throw new Error("an empty proposal");
  const pick = { date: lunch.date, itemId: item.id };
  const { shown } = await loadProposal(context, month, { pick, ask: item.id });
  expect(shown?.answer).toContain("is there, on");
  expect(shown?.picked?.reasons.length).toBeGreaterThan(0);
  const [standIn] = shown?.picked?.standIns ?? [];
  if (!standIn) throw new Error("no stand-in");
  await step({ step: "swap", ...pick, otherId: standIn.id } as never);
  const swapped = (await look()).weeks[0]?.lunches[0]?.items.map(({ id }) => id);
  expect(swapped).toContain(standIn.id);
  expect(swapped).not.toContain(item.id);

  await step({ step: "ban", itemId: standIn.id } as never);
  await step(PROPOSE);
  const all = (await look()).weeks.flatMap((week) => week.lunches.flatMap(({ items }) => items));
  expect(all.map(({ id }) => id)).not.toContain(standIn.id);
  const asked = await loadProposal(context, month, { ask: standIn.id });
  expect(asked.shown?.answer).toContain("you kept it out");
});

test("two proposals stand side by side and change places", async () => {
  const { step, look } = await desk();
  await step(PROPOSE);
  await step({ step: "beside" });
  await step({ ...PROPOSE, sliders: { theme: 0, money: 3 } } as never);
  const before = await look();
  expect(before.beside?.weeks).toHaveLength(4);
  await step({ step: "exchange" });
  const after = await look();
  expect(after.weeks).toEqual(before.beside?.weeks);
  expect(after.beside?.weeks).toEqual(before.weeks);
});

test("a submitted form is read as a step, sliders and all; nonsense is not a step", () => {
  const form = new FormData();
  for (const [name, value] of Object.entries({
    step: "propose",
    month,
    scope: "rest",
    "aim-liked": "2.5",
  }))
    form.set(name, value);
  expect(ChangeProposalInput.parse(stepOfForm(form))).toEqual({
    step: "propose",
    month,
    scope: "rest",
    sliders: { liked: 2.5 },
  });
  form.set("aim-liked", "9");
  expect(ChangeProposalInput.safeParse(stepOfForm(form)).success).toBe(false);
  expect(ChangeProposalInput.safeParse({ step: "steal", month }).success).toBe(false);
});
