import type { ThemeCut } from "./assign-themes.ts";
import type { IndexedProblem } from "./indexed.ts";
import type { PlanModel } from "./model-draft.ts";
import { buildModel, weekBlocks } from "./model.ts";
import type { Solver, SolverSession } from "./solver.ts";
import { priceTies, splitByWeek, type SplitProgram } from "./split-weeks.ts";

/** The relaxed week model with themes to be chosen, whole and one program a week. */
export type ThemeWeeks = {
  readonly indexed: IndexedProblem;
  readonly model: PlanModel;
  readonly split: SplitProgram;
  readonly whole: SolverSession;
  readonly weeks: readonly SolverSession[];
};

/** Loads the programs; to be closed. */
export function openWeeks(indexed: IndexedProblem, solver: Solver): ThemeWeeks {
  const model = buildModel(indexed, { blocks: weekBlocks(indexed), themes: null });
  const split = splitByWeek(model.program, model.columnWeeks);
  const whole = solver.open(model.program, true);
  const weeks = split.weeks.map(({ program }) => solver.open(program, true));
  return { indexed, model, split, whole, weeks };
}

/** Frees the programs. */
export function closeWeeks({ whole, weeks }: ThemeWeeks): void {
  for (const session of [whole, ...weeks]) session.close();
}

/** The relaxation's value with the themes fixed, and the prices of what weeks share. */
export function pricesOf(
  { indexed, model, split, whole }: ThemeWeeks,
  themes: Int32Array,
): { readonly bound: number; readonly prices: Float64Array } {
  const { themeColumns } = model;
  const places = [...themeColumns.keys()].filter((place) => (themeColumns[place] ?? -1) >= 0);
  const fixed = places.map((place) =>
    themes[Math.floor(place / indexed.themeCount)] === place % indexed.themeCount ? 1 : 0,
  );
  whole.setBounds(
    places.map((place) => themeColumns[place] ?? 0),
    fixed,
    fixed,
  );
  const { objective, rowDuals, status } = whole.solve();
  const bound = status === "optimal" ? objective : -Infinity;
  const prices = Float64Array.from(split.ties, (row) => Math.max(0, rowDuals[row] ?? 0));
  return { bound, prices };
}

/** What every theme of every week is worth by its small program, the shared things priced. */
export function themeWorths(ground: ThemeWeeks, prices: Float64Array): ThemeCut {
  const { indexed, model, split, weeks } = ground;
  const { themeCount, weekCount, lockedThemes } = indexed;
  const { costs, remainder } = priceTies(split, prices);
  const worths = new Float64Array(weekCount * (themeCount + 1)).fill(-Infinity);
  split.weeks.forEach(({ columns, own }, week) => {
    const session = weeks[week];
    if (!session) return;
    session.setCosts(Float64Array.from(columns, (column) => costs[column] ?? 0));
    const columnOf = (theme: number): number => model.themeColumns[week * themeCount + theme] ?? -1;
    const themes = [...Array(themeCount).keys()].filter((theme) => columnOf(theme) >= 0);
    const chosen = themes.map((theme) => own[columnOf(theme)] ?? 0);
    const options = lockedThemes[week] === -1 ? [...themes, themeCount] : themes;
    for (const option of options) {
      const fixed = themes.map((theme) => (theme === option ? 1 : 0));
      session.setBounds(chosen, fixed, fixed);
      const { status, objective } = session.solve();
      if (status === "infeasible") continue;
      worths[week * (themeCount + 1) + option] = status === "optimal" ? objective : Infinity;
    }
  });
  return { worths, remainder };
}
