import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { lpText, withSession } from "#lib/planner/index.ts";
import { loadSolver } from "#lib/use-cases/solver/highs-solver.ts";
import { solveLp, solveMps } from "#lib/use-cases/solver/model-files.ts";
import { dietProgram, STIGLER_LEAST_COST, STIGLER_ROWS, type DietTable } from "./diet.published.ts";

const shared = (path: string): string =>
  fileURLToPath(new URL(`../../../../../shared/data/${path}`, import.meta.url));
const left = (path: string): string =>
  existsSync(shared(path)) ? "" : " (left out: 1 check, ../shared is not there)";

async function leastCost(table: DietTable): Promise<number> {
  const solver = await loadSolver();
  return -withSession(solver, dietProgram(table), (session) => session.solve()).objective;
}

test("the diet problem's published optimum, from the foods of the least cost diet", async () => {
  expect(await leastCost(STIGLER_ROWS)).toBeCloseTo(STIGLER_LEAST_COST, 9);
  expect((await leastCost(STIGLER_ROWS)) * 365).toBeCloseTo(39.66, 2);
});

test("the same program as text has the same optimum", async () => {
  const lp = lpText(dietProgram(STIGLER_ROWS));
  const { bound, values } = await solveLp({ lp, start: {}, gap: 0 }, 60);
  expect(-bound).toBeCloseTo(STIGLER_LEAST_COST, 9);
  expect(values?.["x5"]).toBe(0);
});

const stigler = shared("stigler/stigler.json");
test.skipIf(!existsSync(stigler))(
  `the diet problem's published optimum over all 77 foods${left("stigler/stigler.json")}`,
  async () => {
    const data = JSON.parse(readFileSync(stigler, "utf8")) as {
      readonly allowancePerDay: number[];
      readonly foods: readonly { readonly n: number[] }[];
    };
    expect(data.foods).toHaveLength(77);
    const table = { allowances: data.allowancePerDay, foods: data.foods.map(({ n }) => n) };
    expect(await leastCost(table)).toBeCloseTo(STIGLER_LEAST_COST, 9);
  },
);

const menu = shared("menu/mpp_D20.mps");
test.skipIf(!existsSync(menu))(
  // Marrero et al., Mathematics 8(11):1960 (2020): menus for twenty school days at least cost.
  `the open menu-planning benchmark's optimum for twenty days${left("menu/mpp_D20.mps")}`,
  async () => {
    const { status, objective } = await solveMps(readFileSync(menu));
    expect(status).toBe("optimal");
    expect(objective).toBeCloseTo(20.2646, 4);
  },
);
