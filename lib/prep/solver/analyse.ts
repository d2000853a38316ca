import type { Engine } from "./engine.ts";
import { IntList, numberAt } from "./int-list.ts";

// Bound once: through a module loader every use of an imported name may cost a call.
const at = numberAt;

const NOT_NEEDED = -2147483648;

/** What a conflict taught. */
export type Lesson = {
  /** Atoms of which one must hold (side, value pairs): the asserting one first, then the highest. */
  readonly atoms: IntList;
  /** Level to go back to. */
  readonly level: number;
  /** How many levels the clause joins. */
  readonly width: number;
};

/**
 * Learns from conflicts by the first unique implication point (Zhang et al. 2001, ICCAD), on bounds:
 * of two atoms of one side only the stronger is kept, and each is explained in its weakest form.
 */
export class Analysis {
  private readonly engine: Engine;
  /** Value needed of each side, and the trail entry that first gave it. */
  private readonly needed: Int32Array;
  private readonly entry: Int32Array;
  private readonly sides = new IntList(64);
  private readonly reasons = new IntList(64);
  private readonly atoms = new IntList(64);
  /** Called with each atom met. */
  private readonly onMeet: (side: number, value: number) => void;
  private atLevel = 0;

  constructor(engine: Engine, onMeet: (side: number, value: number) => void) {
    this.engine = engine;
    this.needed = new Int32Array(engine.trail.bound.length).fill(NOT_NEEDED);
    this.entry = new Int32Array(engine.trail.bound.length).fill(-1);
    this.onMeet = onMeet;
  }

  /** The lesson of `engine.conflict`; undefined when it needs no choice at all: nothing is possible. */
  learn(): Lesson | undefined {
    const { engine } = this;
    const top = this.highestLevel(engine.conflict);
    if (top === 0) return undefined;
    engine.backTo(top);
    this.atLevel = 0;
    this.need(engine.conflict, top);
    let entry = engine.trail.size;
    while (this.atLevel > 1) {
      entry = this.latestNeededBefore(entry);
      this.resolve(entry, top);
    }
    const asserting = at(engine.trail.side.items, this.latestNeededBefore(entry));
    this.dropImplied(asserting);
    const lesson = this.write(asserting);
    for (let index = 0; index < this.sides.size; index += 1) this.clear(this.sides.get(index));
    this.sides.size = 0;
    return lesson;
  }

  private highestLevel(conflict: IntList): number {
    const { trail } = this.engine;
    let highest = 0;
    for (let index = 0; index < conflict.size; index += 2) {
      const [side, value] = [conflict.get(index), conflict.get(index + 1)];
      if (value <= at(trail.rootBound, side)) continue;
      highest = Math.max(highest, trail.levelOf.get(trail.entryOf(side, value)));
    }
    return highest;
  }

  private need(atoms: IntList, top: number): void {
    const { trail } = this.engine;
    for (let index = 0; index < atoms.size; index += 2) {
      const [side, value] = [atoms.get(index), atoms.get(index + 1)];
      if (value <= at(trail.rootBound, side) || value <= at(this.needed, side)) continue;
      const entry = trail.entryOf(side, value);
      const before = at(this.entry, side);
      if (before < 0) this.sides.push(side);
      this.onMeet(side, value);
      const wasTop = before >= 0 && trail.levelOf.get(before) === top;
      if (!wasTop && trail.levelOf.get(entry) === top) this.atLevel += 1;
      this.needed[side] = value;
      this.entry[side] = entry;
    }
  }

  private latestNeededBefore(entry: number): number {
    const { trail } = this.engine;
    let index = entry - 1;
    while (at(this.entry, trail.side.get(index)) !== index) index -= 1;
    return index;
  }

  /** Replaces a needed atom by the atoms it came from. */
  private resolve(entry: number, top: number): void {
    const { trail } = this.engine;
    const side = trail.side.get(entry);
    this.reasons.size = 0;
    this.engine.explain(side, at(this.needed, side), trail.reason.get(entry), entry, this.reasons);
    this.clear(side);
    this.atLevel -= 1;
    this.need(this.reasons, top);
  }

  private clear(side: number): void {
    this.needed[side] = NOT_NEEDED;
    this.entry[side] = -1;
  }

  /** Leaves out atoms that follow from the others by their own reason. */
  private dropImplied(asserting: number): void {
    const { trail } = this.engine;
    for (let index = 0; index < this.sides.size; index += 1) {
      const side = this.sides.get(index);
      const entry = at(this.entry, side);
      if (entry < 0 || side === asserting || trail.reason.get(entry) < 0) continue;
      this.reasons.size = 0;
      this.engine.explain(
        side,
        at(this.needed, side),
        trail.reason.get(entry),
        entry,
        this.reasons,
      );
      if (this.allNeeded(this.reasons, side)) this.clear(side);
    }
  }

  private allNeeded(atoms: IntList, except: number): boolean {
    for (let index = 0; index < atoms.size; index += 2) {
      const [side, value] = [atoms.get(index), atoms.get(index + 1)];
      if (value <= at(this.engine.trail.rootBound, side)) continue;
      if (side === except || at(this.needed, side) < value) return false;
    }
    return true;
  }

  /** The opposite of what was needed, as a clause. */
  private write(asserting: number): Lesson {
    const { trail } = this.engine;
    const { atoms } = this;
    const levels = new Set<number>();
    atoms.size = 0;
    atoms.push(asserting ^ 1);
    atoms.push(1 - at(this.needed, asserting));
    let [level, highest] = [0, 0];
    for (let index = 0; index < this.sides.size; index += 1) {
      const side = this.sides.get(index);
      const entry = at(this.entry, side);
      if (entry < 0 || side === asserting) continue;
      // A side met, resolved and met again stands in the list twice.
      if (levelSeen(atoms, side ^ 1)) continue;
      const ofEntry = trail.levelOf.get(entry);
      levels.add(ofEntry);
      if (ofEntry > level) [level, highest] = [ofEntry, atoms.size];
      atoms.push(side ^ 1);
      atoms.push(1 - at(this.needed, side));
    }
    if (highest > 2) swapPairs(atoms, 2, highest);
    return { atoms, level, width: levels.size + 1 };
  }
}

function levelSeen(atoms: IntList, side: number): boolean {
  for (let index = 2; index < atoms.size; index += 2) if (atoms.get(index) === side) return true;
  return false;
}

function swapPairs(list: IntList, one: number, other: number): void {
  const { items } = list;
  for (const offset of [0, 1]) {
    const held = at(items, one + offset);
    items[one + offset] = at(items, other + offset);
    items[other + offset] = held;
  }
}
