import type { LinearProgram } from "./program.ts";

/**
 * A program in the LP text format most solvers read, columns named x0, x1 … and rows r0, r1 …: to hand a
 * model to another solver, or to look at it. Open limits are written as such.
 */
export function lpText(program: LinearProgram): string {
  const { columnCount, rowCount, costs, columnLower, columnUpper, isInteger } = program;
  const all = [...Array(columnCount).keys()];
  const terms = all
    .filter((column) => costs[column] !== 0)
    .map((column) => term(costs[column] ?? 0, column));
  return [
    "Maximize",
    ` value: ${terms.length > 0 ? terms.join("\n  ") : "0 x0"}`,
    "Subject To",
    ...Array.from({ length: rowCount }, (_, row) => rowText(program, row)).flat(),
    "Bounds",
    ...all.map(
      (column) => ` ${limit(columnLower[column])} <= x${column} <= ${limit(columnUpper[column])}`,
    ),
    ...(isInteger.includes(1)
      ? ["General", ...all.filter((at) => isInteger[at]).map((at) => ` x${at}`)]
      : []),
    "End",
    "",
  ].join("\n");
}

/** One line a side: the text format has no two-sided rows that every reader takes. */
function rowText(program: LinearProgram, row: number): string[] {
  const { rowStarts, rowColumns, rowValues, rowLower, rowUpper } = program;
  const terms: string[] = [];
  for (let entry = rowStarts[row] ?? 0; entry < (rowStarts[row + 1] ?? 0); entry += 1) {
    terms.push(term(rowValues[entry] ?? 0, rowColumns[entry] ?? 0));
  }
  const [lower = -Infinity, upper = Infinity] = [rowLower[row], rowUpper[row]];
  const left = terms.length > 0 ? terms.join("\n  ") : "0 x0";
  if (lower === upper) return [` r${row}: ${left} = ${lower}`];
  return [
    ...(lower > -Infinity ? [` r${row}l: ${left} >= ${lower}`] : []),
    ...(upper < Infinity ? [` r${row}u: ${left} <= ${upper}`] : []),
  ];
}

function term(value: number, column: number): string {
  return `${value < 0 ? "-" : "+"} ${Math.abs(value)} x${column}`;
}

function limit(value = 0): string {
  if (value === Infinity) return "+inf";
  return value === -Infinity ? "-inf" : String(value);
}
