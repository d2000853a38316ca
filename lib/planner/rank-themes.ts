import type { IndexedProblem } from "./indexed.ts";
import type { PlanModel } from "./model-draft.ts";
import { buildModel, weekBlocks } from "./model.ts";
import type { Solver, SolverSession } from "./solver.ts";
import { priceTies, splitByWeek, type SplitProgram } from "./split-weeks.ts";
import { keepsGaps, pickThemes, themePotentials } from "./theme-potential.ts";

/** A theme in a week and the best it could earn there, given what the other weeks need too. */
export type RankedTheme = {
  readonly week: number;
  readonly theme: number;
  readonly points: number;
};

export type ThemeChoice = {
  /** One theme a week, -1: none possible. */
  readonly themes: Int32Array;
  /** No plan with these themes is worth more. */
  readonly bound: number;
  /** All possible themes, best first. */
  readonly ranked: readonly RankedTheme[];
};

/** Programs solved while looking for themes; each takes a few hundredths of a second for a month. */
const LOOKS_MAX = 14;

/**
 * Themes for all weeks together. The linear relaxation of the week model values a choice of themes;
 * its prices for what weeks share rank every theme of every week by one small program each; the most
 * promising changes are then tried (steepest ascent).
 */
export function chooseThemes(indexed: IndexedProblem, solver: Solver): ThemeChoice {
  const model = buildModel(indexed, { blocks: weekBlocks(indexed), themes: null, fixed: null });
  const split = splitByWeek(model.program, model.columnWeeks);
  const whole = solver.open(model.program, true);
  const weeks = split.weeks.map(({ program }) => solver.open(program, true));
  try {
    return ascend({ indexed, model, split, whole, weeks });
  } finally {
    for (const session of [whole, ...weeks]) session.close();
  }
}

type Ascent = {
  readonly indexed: IndexedProblem;
  readonly model: PlanModel;
  readonly split: SplitProgram;
  readonly whole: SolverSession;
  readonly weeks: readonly SolverSession[];
};

function ascend(ascent: Ascent): ThemeChoice {
  const { indexed } = ascent;
  let themes = pickThemes(indexed, themePotentials(indexed));
  let value = valueOf(ascent, themes);
  let ranked = rank(ascent, value.prices);
  for (let looks = 1; looks < LOOKS_MAX;) {
    const better = firstBetter(ascent, themes, value.bound, ranked, LOOKS_MAX - looks);
    looks += better.looks;
    if (!better.themes) break;
    themes = better.themes;
    value = valueOf(ascent, themes);
    ranked = rank(ascent, value.prices);
    looks += 2;
  }
  return { themes, bound: value.bound, ranked };
}

function firstBetter(
  ascent: Ascent,
  themes: Int32Array,
  bound: number,
  ranked: readonly RankedTheme[],
  looksMax: number,
): { looks: number; themes: Int32Array | null } {
  const pointsOf = (week: number): number =>
    ranked.find((entry) => entry.week === week && entry.theme === themes[week])?.points ??
    -Infinity;
  const moves = ranked
    .map((entry) => ({ ...entry, gain: entry.points - pointsOf(entry.week) }))
    .filter(({ week, gain }) => gain > 1e-6 && ascent.indexed.lockedThemes[week] === -1)
    .sort((left, right) => right.gain - left.gain);
  let looks = 0;
  for (const { week, theme } of moves) {
    if (looks >= looksMax) break;
    if (!keepsGaps(ascent.indexed, themes, week, theme)) continue;
    const changed = themes.slice();
    changed[week] = theme;
    looks += 1;
    if (valueOf(ascent, changed).bound > bound + 1e-6) return { looks, themes: changed };
  }
  return { looks, themes: null };
}

/** The relaxation's value with the themes fixed, and the prices of what weeks share. */
function valueOf(
  { indexed, model, split, whole }: Ascent,
  themes: Int32Array,
): { bound: number; prices: Float64Array } {
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

/** Every theme of every week by its small program, the shared things priced. */
function rank({ indexed, model, split, weeks }: Ascent, prices: Float64Array): RankedTheme[] {
  const { costs } = priceTies(split, prices);
  const ranked = split.weeks.flatMap(({ columns, own }, week): RankedTheme[] => {
    const session = weeks[week];
    if (!session) return [];
    session.setCosts(Float64Array.from(columns, (column) => costs[column] ?? 0));
    const themes = [...Array(indexed.themeCount).keys()].filter(
      (theme) => (model.themeColumns[week * indexed.themeCount + theme] ?? -1) >= 0,
    );
    const chosen = themes.map(
      (theme) => own[model.themeColumns[week * indexed.themeCount + theme] ?? 0] ?? 0,
    );
    return themes.map((theme) => {
      const fixed = themes.map((other) => (other === theme ? 1 : 0));
      session.setBounds(chosen, fixed, fixed);
      const { status, objective } = session.solve();
      return { week, theme, points: status === "optimal" ? objective : -Infinity };
    });
  });
  return ranked.sort((left, right) => right.points - left.points);
}
