import { afterAll, expect, test } from "vitest";
import { runPlanner, type PlanProgress } from "#lib/use-cases/solver/run-planner.ts";
import { mipInWorker } from "#lib/use-cases/solver/solve-mip.ts";
import { endWaiting } from "#lib/use-cases/solver/worker-pool.ts";
import { brokenRules } from "../support/check-plan.ts";
import { planInstance, TINY } from "../support/plan-instance.ts";

afterAll(endWaiting);

const SMALL = { ...TINY, items: 40, daysPerWeek: 3, themes: 3 };

async function follow(run: AsyncGenerator<PlanProgress, void>): Promise<PlanProgress[]> {
  const all: PlanProgress[] = [];
  for await (const progress of run) all.push(progress);
  return all;
}

test("a plan comes at once, gets better and ends with a proof, this thread staying free", async () => {
  const problem = planInstance(SMALL);
  let ticks = 0;
  const clock = setInterval(() => (ticks += 1), 5);
  const all = await follow(runPlanner(problem, { seed: "a", secondsMax: 30 }));
  clearInterval(clock);
  const points = all.map((progress) => progress.points);
  expect(points).toEqual([...points].sort((one, other) => one - other));
  const last = all.at(-1);
  if (!last) throw new Error("no plan came");
  expect(last).toMatchObject({ isDone: true, broken: 0 });
  expect(last.gap).toBeLessThan(0.05);
  expect(brokenRules(problem, last.plan)).toEqual([]);
  expect(ticks).toBeGreaterThan(3);
});

test("a cancelled run ends quietly and at once", async () => {
  const stop = new AbortController();
  const run = runPlanner(planInstance(SMALL), { seed: "a", secondsMax: 60, signal: stop.signal });
  expect((await run.next()).done).toBe(false);
  stop.abort();
  expect(await follow(run)).toEqual([]);
});

test("a program in LP text is solved off this thread, from its known start", async () => {
  const lp = "Minimize\n c: 3 x + 2 y\nSubject To\n r: x + y >= 1.5\nGeneral\n x\n y\nEnd\n";
  const { values, bound } = await mipInWorker(60)({ lp, start: { x: 0, y: 2 }, gap: 0 });
  expect(values).toEqual({ x: 0, y: 2 });
  expect(bound).toBeCloseTo(4, 9);
});

test("a program that cannot be read is told as a failure, and a cancelled one too", async () => {
  await expect(mipInWorker(60)({ lp: "nonsense", start: {}, gap: 0 })).rejects.toThrow("stopped");
  const mip = { lp: "Minimize\n c: x\nSubject To\n r: x >= 1\nEnd\n", start: {}, gap: 0 };
  await expect(mipInWorker(60, AbortSignal.abort())(mip)).rejects.toThrow();
});
