import type { Arcs } from "./arcs.ts";
import { Clauses, HEADER } from "./clauses.ts";
import type { Cumulative } from "./cumulative.ts";
import { IntList, numberAt } from "./int-list.ts";
import { DECISION, Trail } from "./trail.ts";

// Bound once: through a module loader every use of an imported name may cost a call.
const at = numberAt;

// A reason is 4 × reference + kind.
const BY_ARC = 0;
const BY_CLAUSE = 1;
const BY_NOTE = 2;
const BY_BROKEN_ARC = 3;

/**
 * Bounds, and everything that derives bounds from bounds, each able to say why: lazy clause generation
 * (Ohrimenko, Stuckey, Codish 2009, Constraints 14:357–391; for project scheduling Schutt, Feydy,
 * Stuckey, Wallace 2011, Constraints 16:250–282). Reasons are worked out only when a conflict asks.
 */
export class Engine {
  readonly trail: Trail;
  readonly arcs: Arcs;
  readonly clauses: Clauses;
  readonly cumulatives: readonly Cumulative[];
  /** Resources of each side's task. */
  private readonly touched: readonly (readonly number[])[];
  private readonly dirty: Uint8Array;
  /** Written-out reasons: count, then side, value pairs. */
  readonly notes = new IntList(1 << 12);
  private readonly noteSizes = new IntList(64);
  private head = 0;
  /** After a failed propagation: atoms that hold and can't hold together, as side, value pairs. */
  readonly conflict = new IntList(64);

  constructor(trail: Trail, arcs: Arcs, cumulatives: readonly Cumulative[]) {
    this.trail = trail;
    this.arcs = arcs;
    this.clauses = new Clauses(trail.bound.length);
    this.cumulatives = cumulatives;
    this.touched = Array.from({ length: trail.bound.length }, (_, side) =>
      cumulatives.flatMap((resource, index) => (resource.hasTask(side >> 1) ? [index] : [])),
    );
    this.dirty = new Uint8Array(cumulatives.length).fill(1);
  }

  /** Opens a level and chooses an atom that is still open. */
  decide(side: number, value: number): void {
    this.trail.openLevel();
    this.noteSizes.push(this.notes.size);
    this.trail.append(side, value, DECISION);
  }

  backTo(level: number): void {
    if (level >= this.trail.level) return;
    this.notes.size = this.noteSizes.get(level);
    this.noteSizes.size = level;
    this.trail.backTo(level);
    this.head = this.trail.size;
    this.dirty.fill(0);
  }

  /** Starts a written-out reason; the caller pushes side, value pairs and then calls `pushNoted`. */
  openNote(): number {
    this.notes.push(0);
    return this.notes.size - 1;
  }

  note(side: number, value: number): void {
    if (value <= at(this.trail.rootBound, side)) return;
    this.notes.push(side);
    this.notes.push(value);
  }

  /** Derives an atom from the reason begun at `note`; false on conflict. */
  pushNoted(side: number, value: number, note: number): boolean {
    this.notes.items[note] = (this.notes.size - note - 1) / 2;
    return this.push(side, value, 4 * note + BY_NOTE);
  }

  /** Takes the reason begun at `note` as atoms that can't hold together. */
  failNoted(note: number): false {
    this.conflict.size = 0;
    for (let word = note + 1; word < this.notes.size; word += 1)
      this.conflict.push(this.notes.get(word));
    return false;
  }

  pushByClause(side: number, value: number, clause: number): boolean {
    return this.push(side, value, 4 * clause + BY_CLAUSE);
  }

  /** Makes an atom hold for a reason; false, with `conflict` filled, when it can't. */
  push(side: number, value: number, reason: number): boolean {
    const trail = this.trail;
    if (value <= at(trail.bound, side)) return true;
    const opposite = at(trail.bound, side ^ 1);
    if (value <= -opposite) {
      trail.append(side, value, reason);
      return true;
    }
    // The least contradictory value gives the most general explanation.
    this.conflict.size = 0;
    this.explain(side, 1 - opposite, reason, trail.size, this.conflict);
    this.conflict.push(side ^ 1);
    this.conflict.push(opposite);
    return false;
  }

  /** Appends the atoms from which a reason derived (side, value), as they stood before `entry`. */
  explain(side: number, value: number, reason: number, entry: number, out: IntList): void {
    const [kind, reference] = [reason & 3, reason >> 2];
    if (kind === BY_ARC) {
      out.push(at(this.arcs.from, reference));
      out.push(value - at(this.arcs.lag, reference));
      const condition = at(this.arcs.conditionSide, reference);
      if (condition < 0) return;
      out.push(condition);
      out.push(at(this.arcs.conditionValue, reference));
    } else if (kind === BY_NOTE) {
      const end = reference + 1 + 2 * this.notes.get(reference);
      for (let word = reference + 1; word < end; word += 1) out.push(this.notes.get(word));
    } else if (kind === BY_CLAUSE) this.explainClause(side, value, reference, out);
    else {
      const [from, to] = [at(this.arcs.from, reference), at(this.arcs.to, reference)];
      const least = this.trail.boundBefore(from, entry);
      out.push(from);
      out.push(least);
      out.push(to ^ 1);
      out.push(1 - least - at(this.arcs.lag, reference));
    }
  }

  private explainClause(side: number, value: number, clause: number, out: IntList): void {
    const arena = this.clauses.arena;
    const end = clause + HEADER + 2 * arena.get(clause);
    let isFound = false;
    for (let word = clause + HEADER; word < end; word += 2) {
      // The derived atom itself is left out, once.
      if (!isFound && arena.get(word) === side && arena.get(word + 1) >= value) {
        isFound = true;
        continue;
      }
      out.push(arena.get(word) ^ 1);
      out.push(1 - arena.get(word + 1));
    }
  }

  /** Derives until nothing new follows; false on conflict. */
  propagate(): boolean {
    for (;;) {
      while (this.head < this.trail.size) {
        const entry = this.head++;
        const side = this.trail.side.get(entry);
        const old = this.trail.old.get(entry);
        if (!this.visitClauses(side, old, this.trail.value.get(entry))) return false;
        if (!this.wakeArcs(side, old)) return false;
        if (at(this.trail.newest, side) !== entry) continue;
        if (!this.followArcs(side)) return false;
        for (const resource of this.touched[side] ?? []) this.dirty[resource] = 1;
      }
      const resource = this.dirty.indexOf(1);
      if (resource < 0) return true;
      this.dirty[resource] = 0;
      if (!this.cumulatives[resource]?.propagate(this)) return false;
    }
  }

  private followArcs(side: number): boolean {
    const { arcs, trail } = this;
    const base = at(trail.bound, side);
    for (let arc = at(arcs.first, side); arc < at(arcs.first, side + 1); arc += 1) {
      const value = base + at(arcs.lag, arc);
      const to = at(arcs.to, arc);
      if (value <= at(trail.bound, to)) continue;
      const condition = at(arcs.conditionSide, arc);
      if (condition < 0 || trail.holds(condition, at(arcs.conditionValue, arc))) {
        if (!this.push(to, value, 4 * arc + BY_ARC)) return false;
      } else if (trail.fails(to, value)) {
        const opposite = 1 - at(arcs.conditionValue, arc);
        if (!this.push(condition ^ 1, opposite, 4 * arc + BY_BROKEN_ARC)) return false;
      }
    }
    return true;
  }

  /** Follows the arcs whose condition has just come to hold. */
  private wakeArcs(side: number, old: number): boolean {
    for (const arc of this.arcs.waiting[side] ?? []) {
      const needed = at(this.arcs.conditionValue, arc);
      if (needed <= old || !this.trail.holds(side, needed)) continue;
      const value = at(this.trail.bound, at(this.arcs.from, arc)) + at(this.arcs.lag, arc);
      if (!this.push(at(this.arcs.to, arc), value, 4 * arc + BY_ARC)) return false;
    }
    return true;
  }

  /** Looks at the clauses of which a watched atom failed when a side went from `old` to `value`. */
  private visitClauses(side: number, old: number, value: number): boolean {
    const list = this.clauses.watches[side];
    if (!list) return true;
    let [kept, index] = [0, 0];
    let isConsistent = true;
    while (index < list.size) {
      const clause = list.get(index);
      const failsAt = list.get(index + 1);
      index += 2;
      const isTouched = failsAt > old && failsAt <= value && isConsistent;
      if (isTouched) {
        const found = this.rewatch(clause, side, failsAt);
        if (found === MOVED) continue;
        if (found === CONFLICT) isConsistent = false;
      }
      list.items[kept] = clause;
      list.items[kept + 1] = failsAt;
      kept += 2;
    }
    list.size = kept;
    return isConsistent;
  }

  /** Finds another atom to watch, or derives the last open one. */
  private rewatch(clause: number, failedSide: number, failsAt: number): number {
    const { arena } = this.clauses;
    const { trail } = this;
    const first = this.clauses.firstAtom(clause);
    const words = arena.items;
    // The failed atom stands second from here on.
    if (at(words, first) === (failedSide ^ 1) && at(words, first + 1) === 1 - failsAt)
      swapAtoms(words, first, first + 2);
    const [side, value] = [at(words, first), at(words, first + 1)];
    if (trail.holds(side, value)) return KEPT;
    const end = first + 2 * at(words, clause);
    for (let word = first + 4; word < end; word += 2) {
      if (trail.fails(at(words, word), at(words, word + 1))) continue;
      swapAtoms(words, first + 2, word);
      this.clauses.watch(clause, 1);
      return MOVED;
    }
    return this.pushByClause(side, value, clause) ? KEPT : CONFLICT;
  }
}

const KEPT = 0;
const MOVED = 1;
const CONFLICT = 2;

function swapAtoms(words: Int32Array, one: number, other: number): void {
  const [side, value] = [at(words, one), at(words, one + 1)];
  words[one] = at(words, other);
  words[one + 1] = at(words, other + 1);
  words[other] = side;
  words[other + 1] = value;
}
