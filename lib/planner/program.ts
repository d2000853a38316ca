/** A mixed-integer linear program to be maximised, rows in compressed sparse form. */
export type LinearProgram = {
  readonly columnCount: number;
  readonly rowCount: number;
  readonly costs: Float64Array;
  readonly columnLower: Float64Array;
  readonly columnUpper: Float64Array;
  /** 1: whole numbers only. */
  readonly isInteger: Uint8Array;
  readonly rowLower: Float64Array;
  readonly rowUpper: Float64Array;
  readonly rowStarts: Int32Array;
  readonly rowColumns: Int32Array;
  readonly rowValues: Float64Array;
  /** For each row, which rule it belongs to: a position in `rules`. */
  readonly rowRules: Int32Array;
  readonly rules: readonly string[];
};

/** Collects columns and rows of a program. */
export class ProgramBuilder {
  private readonly costs: number[] = [];
  private readonly lower: number[] = [];
  private readonly upper: number[] = [];
  private readonly integer: number[] = [];
  private readonly weeks: number[] = [];
  /** Week of the columns added next, -1: of no week. */
  week = -1;
  private readonly rowLower: number[] = [];
  private readonly rowUpper: number[] = [];
  private readonly starts: number[] = [0];
  private readonly columns: number[] = [];
  private readonly values: number[] = [];
  private readonly rowRules: number[] = [];
  private readonly rules = new Map<string, number>();

  /** Adds a column; returns its number. */
  column(cost: number, lower: number, upper: number, isInteger: boolean): number {
    this.integer.push(isInteger ? 1 : 0);
    this.weeks.push(this.week);
    this.lower.push(lower);
    this.upper.push(upper);
    return this.costs.push(cost) - 1;
  }

  /** Upper bound of a column. */
  upperOf(column: number): number {
    return this.upper[column] ?? 0;
  }

  /** Adds a row `lower ≤ Σ value·column ≤ upper` of a named rule; one value for all, or one each. */
  row(
    rule: string,
    columns: readonly number[],
    values: number | readonly number[],
    lower: number,
    upper: number,
  ): void {
    columns.forEach((column, place) => {
      const value = typeof values === "number" ? values : (values[place] ?? 0);
      if (value === 0) return;
      this.columns.push(column);
      this.values.push(value);
    });
    this.starts.push(this.columns.length);
    this.rowLower.push(lower);
    this.rowUpper.push(upper);
    const number = this.rules.get(rule) ?? this.rules.size;
    this.rules.set(rule, number);
    this.rowRules.push(number);
  }

  /** The week each column belongs to. */
  columnWeeks(): Int32Array {
    return Int32Array.from(this.weeks);
  }

  /** The finished program. */
  build(): LinearProgram {
    return {
      columnCount: this.costs.length,
      rowCount: this.rowLower.length,
      costs: Float64Array.from(this.costs),
      columnLower: Float64Array.from(this.lower),
      columnUpper: Float64Array.from(this.upper),
      isInteger: Uint8Array.from(this.integer),
      rowLower: Float64Array.from(this.rowLower),
      rowUpper: Float64Array.from(this.rowUpper),
      rowStarts: Int32Array.from(this.starts),
      rowColumns: Int32Array.from(this.columns),
      rowValues: Float64Array.from(this.values),
      rowRules: Int32Array.from(this.rowRules),
      rules: [...this.rules.keys()],
    };
  }
}
