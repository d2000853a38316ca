import type { LinearProgram } from "./program.ts";

/** A program of whole weeks taken apart: one program a week, and the rows that tie weeks together. */
export type SplitProgram = {
  readonly program: LinearProgram;
  readonly weeks: readonly WeekProgram[];
  /** Rows over columns of more than one week; all of the form `Σ ≤ limit`. */
  readonly ties: readonly number[];
  /** Columns of no week (something owed that several weeks could settle). */
  readonly looseColumns: readonly number[];
};

type WeekProgram = {
  readonly program: LinearProgram;
  /** For each of its columns, the column of the whole program. */
  readonly columns: Int32Array;
  /** For each column of the whole program, its own; -1: of another week. */
  readonly own: Int32Array;
};

/** Takes a program apart by the week of each column (-1: none). */
export function splitByWeek(program: LinearProgram, columnWeeks: Int32Array): SplitProgram {
  const weekCount = Math.max(-1, ...columnWeeks) + 1;
  const rowWeeks = weeksOfRows(program, columnWeeks);
  return {
    program,
    weeks: Array.from({ length: weekCount }, (_, week) =>
      weekProgram(program, columnWeeks, rowWeeks, week),
    ),
    ties: [...rowWeeks.keys()].filter((row) => rowWeeks[row] === -1),
    looseColumns: [...columnWeeks.keys()].filter((column) => columnWeeks[column] === -1),
  };
}

/**
 * Costs once the ties have prices instead of limits (Lagrangian relaxation; Geoffrion 1974): each
 * column pays for what it uses of a tie. The limits' worth and the loose columns are the remainder.
 */
export function priceTies(
  { program, ties, looseColumns }: SplitProgram,
  prices: Float64Array,
): { readonly costs: Float64Array; readonly remainder: number } {
  const { rowStarts, rowColumns, rowValues, rowUpper } = program;
  const costs = program.costs.slice();
  let remainder = 0;
  ties.forEach((row, place) => {
    const price = prices[place] ?? 0;
    if (price === 0) return;
    remainder += price * (rowUpper[row] ?? 0);
    for (let entry = rowStarts[row] ?? 0; entry < (rowStarts[row + 1] ?? 0); entry += 1) {
      const column = rowColumns[entry] ?? 0;
      costs[column] = (costs[column] ?? 0) - price * (rowValues[entry] ?? 0);
    }
  });
  for (const column of looseColumns) {
    const cost = costs[column] ?? 0;
    const at = cost > 0 ? program.columnUpper[column] : program.columnLower[column];
    remainder += cost * (at ?? 0);
  }
  return { costs, remainder };
}

/** The week of each row; -1 for ties. */
function weeksOfRows(program: LinearProgram, columnWeeks: Int32Array): Int32Array {
  const weeks = new Int32Array(program.rowCount);
  for (let row = 0; row < program.rowCount; row += 1) {
    const from = program.rowStarts[row] ?? 0;
    const to = program.rowStarts[row + 1] ?? 0;
    let week = from < to ? (columnWeeks[program.rowColumns[from] ?? 0] ?? -1) : 0;
    for (let entry = from; entry < to; entry += 1) {
      if (columnWeeks[program.rowColumns[entry] ?? 0] !== week) week = -1;
    }
    weeks[row] = week;
  }
  return weeks;
}

function weekProgram(
  program: LinearProgram,
  columnWeeks: Int32Array,
  rowWeeks: Int32Array,
  week: number,
): WeekProgram {
  const columns = [...columnWeeks.keys()].filter((column) => columnWeeks[column] === week);
  const own = new Int32Array(program.columnCount).fill(-1);
  columns.forEach((column, place) => (own[column] = place));
  const rows = [...rowWeeks.keys()].filter((row) => rowWeeks[row] === week);
  const starts = [0];
  const entries: number[] = [];
  for (const row of rows) {
    const to = program.rowStarts[row + 1] ?? 0;
    for (let entry = program.rowStarts[row] ?? 0; entry < to; entry += 1) entries.push(entry);
    starts.push(entries.length);
  }
  const of = (figures: Float64Array, numbers: readonly number[]): Float64Array =>
    Float64Array.from(numbers, (number) => figures[number] ?? 0);
  return {
    columns: Int32Array.from(columns),
    own,
    program: {
      columnCount: columns.length,
      rowCount: rows.length,
      costs: of(program.costs, columns),
      columnLower: of(program.columnLower, columns),
      columnUpper: of(program.columnUpper, columns),
      isInteger: Uint8Array.from(columns, (column) => program.isInteger[column] ?? 0),
      rowLower: of(program.rowLower, rows),
      rowUpper: of(program.rowUpper, rows),
      rowStarts: Int32Array.from(starts),
      rowColumns: Int32Array.from(entries, (entry) => own[program.rowColumns[entry] ?? 0] ?? 0),
      rowValues: of(program.rowValues, entries),
      rowRules: Int32Array.from(rows, (row) => program.rowRules[row] ?? 0),
      rules: program.rules,
    },
  };
}
