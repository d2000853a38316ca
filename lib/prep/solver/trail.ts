import { IntList, numberAt } from "./int-list.ts";

// Bound once: through a module loader every use of an imported name may cost a call.
const at = numberAt;

/** Reason of a bound that was chosen, not derived. */
export const DECISION = -1;
/** Reason of a bound that holds without conditions. */
export const ROOT = -2;

/**
 * Integer variables as pairs of bounds, with the history of how each bound came to be.
 *
 * Side `2x` of variable x holds its least value, side `2x + 1` the negative of its greatest: both only
 * grow. An *atom* (side, value) says `bound[side] ≥ value`; its opposite is (side ^ 1, 1 − value).
 */
export class Trail {
  readonly bound: Int32Array;
  /** Index of the newest entry of a side; −1 when it still has its first bound. */
  readonly newest: Int32Array;
  /** Values below or at which a side's atom holds in every schedule. */
  readonly rootBound: Int32Array;
  side = new IntList(1024);
  value = new IntList(1024);
  old = new IntList(1024);
  previous = new IntList(1024);
  reason = new IntList(1024);
  levelOf = new IntList(1024);
  /** Size of the trail at the start of each level. */
  levels = new IntList(64);

  constructor(least: readonly number[], greatest: readonly number[]) {
    this.bound = new Int32Array(2 * least.length);
    least.forEach((value, variable) => (this.bound[2 * variable] = value));
    greatest.forEach((value, variable) => (this.bound[2 * variable + 1] = -value));
    this.rootBound = this.bound.slice();
    this.newest = new Int32Array(2 * least.length).fill(-1);
  }

  get size(): number {
    return this.side.size;
  }

  get level(): number {
    return this.levels.size;
  }

  holds(side: number, value: number): boolean {
    return at(this.bound, side) >= value;
  }

  /** True when the atom can no longer hold. */
  fails(side: number, value: number): boolean {
    return at(this.bound, side ^ 1) > -value;
  }

  isFixed(variable: number): boolean {
    return at(this.bound, 2 * variable) === -at(this.bound, 2 * variable + 1);
  }

  openLevel(): void {
    this.levels.push(this.size);
  }

  /** Records a stronger bound; the caller has checked that it is stronger and possible. */
  append(side: number, value: number, reason: number): void {
    this.side.push(side);
    this.value.push(value);
    this.old.push(at(this.bound, side));
    this.previous.push(at(this.newest, side));
    this.reason.push(reason);
    this.levelOf.push(this.level);
    this.newest[side] = this.size - 1;
    this.bound[side] = value;
    if (this.level === 0) this.rootBound[side] = value;
  }

  /** Index of the entry that first made an atom hold (it holds now, and not at the root). */
  entryOf(side: number, value: number): number {
    let entry = at(this.newest, side);
    while (this.old.get(entry) >= value) entry = this.previous.get(entry);
    return entry;
  }

  /** The bound a side had before an entry was made. */
  boundBefore(side: number, entry: number): number {
    let index = at(this.newest, side);
    let bound = at(this.bound, side);
    while (index >= entry) {
      bound = this.old.get(index);
      index = this.previous.get(index);
    }
    return bound;
  }

  /** Takes back everything above a level. */
  backTo(level: number): void {
    const size = this.levels.get(level);
    for (let entry = this.size - 1; entry >= size; entry -= 1) {
      const side = this.side.get(entry);
      this.bound[side] = this.old.get(entry);
      this.newest[side] = this.previous.get(entry);
    }
    for (const list of [this.side, this.value, this.old, this.previous, this.reason, this.levelOf])
      list.size = size;
    this.levels.size = level;
  }
}
