/**
 * Difference constraints between sides: `bound[to] ≥ bound[from] + lag`, some only under a condition
 * (an atom that must hold). Stored flat, sorted by `from`.
 */
export type Arc = {
  readonly from: number;
  readonly to: number;
  readonly lag: number;
  /** Side of the condition; −1: always. */
  readonly conditionSide: number;
  readonly conditionValue: number;
};

export class Arcs {
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly lag: Int32Array;
  readonly conditionSide: Int32Array;
  readonly conditionValue: Int32Array;
  /** Arcs leaving side s are `first[s] … first[s + 1] − 1`. */
  readonly first: Int32Array;
  /** Arcs that wait for an atom of a side. */
  readonly waiting: readonly (readonly number[])[];

  constructor(arcs: readonly Arc[], sides: number) {
    const sorted = [...arcs].sort((a, b) => a.from - b.from);
    this.from = Int32Array.from(sorted, (arc) => arc.from);
    this.to = Int32Array.from(sorted, (arc) => arc.to);
    this.lag = Int32Array.from(sorted, (arc) => arc.lag);
    this.conditionSide = Int32Array.from(sorted, (arc) => arc.conditionSide);
    this.conditionValue = Int32Array.from(sorted, (arc) => arc.conditionValue);
    this.first = new Int32Array(sides + 1);
    for (const arc of sorted) this.first[arc.from + 1] = (this.first[arc.from + 1] ?? 0) + 1;
    for (let side = 0; side < sides; side += 1)
      this.first[side + 1] = (this.first[side + 1] ?? 0) + (this.first[side] ?? 0);
    const waiting: number[][] = Array.from({ length: sides }, () => []);
    sorted.forEach((arc, index) => waiting[arc.conditionSide]?.push(index));
    this.waiting = waiting;
  }
}

/** "start(j) ≥ start(i) + lag" as two arcs: on least values, and mirrored on greatest values. */
export function startToStart(
  i: number,
  j: number,
  lag: number,
  conditionSide = -1,
  conditionValue = 0,
): Arc[] {
  const condition = { lag, conditionSide, conditionValue };
  return [
    { from: 2 * i, to: 2 * j, ...condition },
    { from: 2 * j + 1, to: 2 * i + 1, ...condition },
  ];
}
