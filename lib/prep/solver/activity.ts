import { numberAt } from "./int-list.ts";
import type { Trail } from "./trail.ts";

// Bound once: through a module loader every use of an imported name may cost a call.
const at = numberAt;

const DECAY = 0.95;
/** Atoms told apart at most; beyond it neighbouring values of a variable are counted together. */
const ATOMS_MAX = 1 << 18;
const LARGEST = 1e100;

/**
 * How often each atom "x ≥ v" met in late conflicts, older ones counting less (VSIDS: Moskewicz et al.
 * 2001, DAC 530–535; on bounds as in Schutt et al. 2011). An atom and its opposite count as one.
 */
export class Activity {
  private readonly trail: Trail;
  private readonly least: Int32Array;
  /** Atoms of variable x are `first[x] … first[x + 1] − 1`. */
  private readonly first: Int32Array;
  private readonly shift: number;
  private readonly score: Float64Array;
  private bump = 1;

  constructor(trail: Trail, variables: number) {
    this.trail = trail;
    this.least = Int32Array.from({ length: variables }, (_, x) => at(trail.rootBound, 2 * x));
    const spans = Array.from(this.least, (least, x) => -at(trail.rootBound, 2 * x + 1) - least + 1);
    const total = spans.reduce((sum, span) => sum + span, 0);
    this.shift = Math.max(0, Math.ceil(Math.log2(Math.max(1, total) / ATOMS_MAX)));
    this.first = new Int32Array(variables + 1);
    spans.forEach((span, x) => (this.first[x + 1] = at(this.first, x) + (span >> this.shift) + 1));
    this.score = new Float64Array(at(this.first, variables));
  }

  /** Counts an atom that a conflict met. */
  meet(side: number, value: number): void {
    const variable = side >> 1;
    // "x ≤ −value" is the opposite of "x ≥ 1 − value".
    const least = (side & 1) === 0 ? value : 1 - value;
    const atom = this.atomOf(variable, least);
    this.score[atom] = (this.score[atom] ?? 0) + this.bump;
  }

  /** After a conflict: what was met before counts less. */
  decay(): void {
    this.bump /= DECAY;
    if (this.bump < LARGEST) return;
    for (let atom = 0; atom < this.score.length; atom += 1)
      this.score[atom] = (this.score[atom] ?? 0) / LARGEST;
    this.bump /= LARGEST;
  }

  /** The open atom met most, as side and value; undefined when none that is open was ever met. */
  choose(): { readonly side: number; readonly value: number } | undefined {
    const { bound } = this.trail;
    let [chosen, highest, value] = [-1, 0, 0];
    for (let variable = 0; variable < this.least.length; variable += 1) {
      const [least, greatest] = [at(bound, 2 * variable), -at(bound, 2 * variable + 1)];
      if (least === greatest) continue;
      const last = this.atomOf(variable, greatest);
      for (let atom = this.atomOf(variable, least + 1); atom <= last; atom += 1) {
        const score = this.score[atom] ?? 0;
        if (score <= highest) continue;
        [chosen, highest] = [variable, score];
        const begins = at(this.least, variable) + ((atom - at(this.first, variable)) << this.shift);
        value = Math.max(least + 1, begins);
      }
    }
    return chosen < 0 ? undefined : { side: 2 * chosen, value };
  }

  private atomOf(variable: number, value: number): number {
    return at(this.first, variable) + ((value - at(this.least, variable)) >> this.shift);
  }
}
