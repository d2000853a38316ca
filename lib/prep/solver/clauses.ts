import { IntList } from "./int-list.ts";
import type { Trail } from "./trail.ts";

/** Words before a clause's atoms: how many atoms, and its use (higher is worth keeping). */
export const HEADER = 2;

/**
 * Learned clauses: each a list of atoms of which one must hold. The first two atoms are watched: when
 * one of them fails, its clause is looked at. Stored flat; a clause is named by its offset.
 */
export class Clauses {
  arena = new IntList(1 << 16);
  /** Per side: (clause, value at which the watched atom fails) pairs. */
  readonly watches: IntList[];
  count = 0;

  constructor(sides: number) {
    this.watches = Array.from({ length: sides }, () => new IntList(8));
  }

  /** Stores a clause of side, value pairs, the two to watch first; returns its name. */
  add(atoms: IntList, use: number): number {
    const clause = this.arena.size;
    this.arena.push(atoms.size / 2);
    this.arena.push(use);
    for (let index = 0; index < atoms.size; index += 1) this.arena.push(atoms.get(index));
    this.watch(clause, 0);
    this.watch(clause, 1);
    this.count += 1;
    return clause;
  }

  /** Offset of a clause's first atom. */
  firstAtom(clause: number): number {
    return clause + HEADER;
  }

  /** Watches a clause's atom by position: it fails when the opposite side reaches 1 − value. */
  watch(clause: number, position: number): void {
    const offset = clause + HEADER + 2 * position;
    const list = this.watches[this.arena.get(offset) ^ 1];
    list?.push(clause);
    list?.push(1 - this.arena.get(offset + 1));
  }

  /**
   * Keeps the better half of the clauses (fewest levels joined) and all the very good ones, less what
   * the root has settled. Only at the root, after propagation.
   */
  forgetHalf(trail: Trail): void {
    const all: number[] = [];
    for (let clause = 0; clause < this.arena.size; clause += HEADER + 2 * this.arena.get(clause))
      all.push(clause);
    const uses = all.map((clause) => this.arena.get(clause + 1)).sort((a, b) => a - b);
    const limit = Math.max(KEEP_ALWAYS, uses[uses.length >> 1] ?? 0);
    const old = this.arena;
    this.arena = new IntList(old.items.length);
    this.count = 0;
    for (const list of this.watches) list.size = 0;
    const atoms = new IntList(64);
    all.forEach((clause, index) => {
      const use = old.get(clause + 1);
      const isOlder = index < all.length / 2;
      if (use > limit || (use === limit && use > KEEP_ALWAYS && isOlder)) return;
      if (copyOpenAtoms(old, clause, trail, atoms)) this.add(atoms, use);
    });
  }
}

/** Clauses that join at most so many levels are never forgotten. */
const KEEP_ALWAYS = 2;

/** Copies a clause's atoms that have not failed; false when one holds already. */
function copyOpenAtoms(arena: IntList, clause: number, trail: Trail, out: IntList): boolean {
  out.size = 0;
  const end = clause + HEADER + 2 * arena.get(clause);
  for (let word = clause + HEADER; word < end; word += 2) {
    const [side, value] = [arena.get(word), arena.get(word + 1)];
    if (trail.holds(side, value)) return false;
    if (trail.fails(side, value)) continue;
    out.push(side);
    out.push(value);
  }
  return true;
}
