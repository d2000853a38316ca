import type { IndexedProblem } from "./indexed.ts";
import type { PlanModel } from "./model-draft.ts";
import type { WeekCounts } from "./place-items.ts";
import type { SolverSession } from "./solver.ts";

/** Which items come in which week: a solution of the week model. */
export type ItemsSolution = { readonly objective: number; readonly values: Float64Array };

/** Gap at which the items of the weeks count as solved. */
const ITEMS_GAP = 0.001;

/**
 * Solves the week model as far as the nodes reach, from a start; `watch` gets each better solution at
 * once. Undefined when none was found.
 */
export function solveItems(
  session: SolverSession,
  limits: { readonly nodesMax: number },
  watch?: (solution: ItemsSolution) => void,
): ItemsSolution | undefined {
  const { status, objective, values } = session.solve({
    ...limits,
    relativeGap: ITEMS_GAP,
    watch: (event) => {
      if (event.kind === "solution") watch?.({ ...event, values: event.values.slice() });
    },
  });
  return status === "optimal" || status === "feasible" ? { objective, values } : undefined;
}

/**
 * The items of some weeks chosen anew, the other weeks' kept (large neighbourhood search; Shaw 1998).
 * Undefined when the solver finds nothing better.
 */
export function improveItems(
  session: SolverSession,
  { program, columnWeeks }: PlanModel,
  known: ItemsSolution,
  weeks: readonly number[],
  limits: { readonly nodesMax: number },
): ItemsSolution | undefined {
  const whole = [...program.isInteger.keys()].filter((column) => program.isInteger[column] === 1);
  const kept = whole.filter((column) => !weeks.includes(columnWeeks[column] ?? -1));
  const valueOf = (column: number): number => Math.round(known.values[column] ?? 0);
  session.setBounds(kept, kept.map(valueOf), kept.map(valueOf));
  const { status, objective, values } = session.solve({
    ...limits,
    relativeGap: ITEMS_GAP / 4,
    start: { columns: whole, values: whole.map(valueOf) },
  });
  session.setBounds(
    kept,
    kept.map((column) => program.columnLower[column] ?? 0),
    kept.map((column) => program.columnUpper[column] ?? 0),
  );
  const isFound = status === "optimal" || status === "feasible";
  return isFound && objective > known.objective + 1e-6 ? { objective, values } : undefined;
}

/** How often a solution has each item in each week. */
export function countsOf(
  indexed: IndexedProblem,
  model: PlanModel,
  { values }: ItemsSolution,
): WeekCounts {
  const counts = new Int32Array(indexed.weekCount * indexed.itemCount);
  model.scope.blocks.forEach(({ week }, block) => {
    for (let item = 0; item < indexed.itemCount; item += 1) {
      const column = model.columns[block * indexed.itemCount + item] ?? -1;
      if (column >= 0) counts[week * indexed.itemCount + item] = Math.round(values[column] ?? 0);
    }
  });
  return counts;
}

/** Pairs of weeks in the order they are tried: those two apart share most, then neighbours, then others. */
export function pairsOfWeeks(weekCount: number): number[][] {
  if (weekCount < 3) return [[...Array(weekCount).keys()]];
  const pairs = [2, 1, ...Array.from({ length: weekCount }, (_, more) => more + 3)].flatMap(
    (apart) =>
      Array.from({ length: Math.max(0, weekCount - apart) }, (_, week) => [week, week + apart]),
  );
  return pairs;
}
