import { Activity } from "./activity.ts";
import { Analysis, type Lesson } from "./analyse.ts";
import { numberAt } from "./int-list.ts";
import type { Model } from "./model.ts";
import { ROOT } from "./trail.ts";

const RESTART_UNIT = 128;
const FORGET_FIRST = 3000;
const FORGET_MORE = 500;

export type Outcome = "solved" | "impossible" | "unfinished";

/**
 * Conflict-driven search for the least end. It first tries the least end not yet refuted; each
 * refutation raises the proven bound, so the first schedule found this way is proven the best.
 * Everything is counted in steps, so a larger budget repeats the smaller one's run and goes on.
 */
export class Search {
  readonly model: Model;
  /** Best starts known, and their end. */
  best: Int32Array | undefined;
  bestEnd: number;
  steps = 0;
  private readonly analysis: Analysis;
  private readonly activity: Activity;
  private restarts = 0;
  private forgetAt = FORGET_FIRST;

  constructor(model: Model, best: Int32Array | undefined, bestEnd: number) {
    this.model = model;
    this.best = best;
    this.bestEnd = bestEnd;
    this.activity = new Activity(model.engine.trail, model.variables);
    this.analysis = new Analysis(model.engine, (side, value) => {
      this.activity.meet(side, value);
    });
  }

  /** The proven bound on the end. */
  get bound(): number {
    return numberAt(this.model.engine.trail.rootBound, 2 * this.model.end);
  }

  /** Runs until proven or until so many steps are used in all. */
  run(steps: number): Outcome {
    const { engine } = this.model;
    if (!engine.propagate() || (this.best && !this.askForBetter())) return this.finished();
    let untilRestart = RESTART_UNIT * luby(this.restarts + 1);
    for (;;) {
      if (!engine.propagate()) {
        this.steps += 1;
        untilRestart -= 1;
        const lesson = this.analysis.learn();
        if (!lesson || !this.apply(lesson)) return this.finished();
        this.activity.decay();
        continue;
      }
      if (this.steps >= steps) return "unfinished";
      if (untilRestart <= 0) {
        this.restarts += 1;
        untilRestart = RESTART_UNIT * luby(this.restarts + 1);
        this.restart();
        continue;
      }
      if (this.decide()) continue;
      this.keep();
      if (!this.askForBetter()) return this.finished();
    }
  }

  private finished(): Outcome {
    return this.best ? "solved" : "impossible";
  }

  /** Goes back and lets the learned clause speak; false when it contradicts the root. */
  private apply({ atoms, level, width }: Lesson): boolean {
    const { engine } = this.model;
    engine.backTo(level);
    const [side, value] = [atoms.get(0), atoms.get(1)];
    if (atoms.size > 2) return engine.pushByClause(side, value, engine.clauses.add(atoms, width));
    return this.hold(side, value);
  }

  /** Makes an atom hold at the root; false when it can't. */
  private hold(side: number, value: number): boolean {
    const { trail } = this.model.engine;
    if (trail.fails(side, value)) return false;
    if (!trail.holds(side, value)) trail.append(side, value, ROOT);
    return true;
  }

  private restart(): void {
    const { engine } = this.model;
    engine.backTo(0);
    if (engine.clauses.count < this.forgetAt || !engine.propagate()) return;
    engine.clauses.forgetHalf(engine.trail);
    this.forgetAt += FORGET_MORE;
  }

  /** Keeps the schedule found: every start at its least value. */
  private keep(): void {
    const { engine, tasks, end } = this.model;
    this.best = Int32Array.from({ length: tasks }, (_, task) =>
      numberAt(engine.trail.bound, 2 * task),
    );
    this.bestEnd = numberAt(engine.trail.bound, 2 * end);
  }

  /** From the root on, only earlier ends count; false when the bound leaves none. */
  private askForBetter(): boolean {
    const { engine, end } = this.model;
    engine.backTo(0);
    return this.hold(2 * end + 1, 1 - this.bestEnd);
  }

  /** Chooses; false when every start and order is settled. */
  private decide(): boolean {
    const { engine, end } = this.model;
    const { trail } = engine;
    if (trail.level === 0 && this.best && !trail.isFixed(end)) {
      this.steps += 1;
      engine.decide(2 * end + 1, -this.bound);
      return true;
    }
    const atom = this.activity.choose() ?? this.firstOpen();
    if (!atom) return false;
    this.steps += 1;
    engine.decide(atom.side, atom.value);
    return true;
  }

  /** The first variable that is open, at its least value; undefined when all are settled. */
  private firstOpen(): { readonly side: number; readonly value: number } | undefined {
    const { engine, variables } = this.model;
    for (let variable = 0; variable < variables; variable += 1) {
      if (engine.trail.isFixed(variable)) continue;
      return { side: 2 * variable + 1, value: -numberAt(engine.trail.bound, 2 * variable) };
    }
    return undefined;
  }
}

/** The sequence 1 1 2 1 1 2 4 … (Luby, Sinclair, Zuckerman 1993, Information Processing Letters 47:173–180). */
function luby(index: number): number {
  let size = 1;
  while (size < index) size = 2 * size + 1;
  let rest = index;
  while (size !== rest) {
    size = (size - 1) / 2;
    if (rest > size) rest -= size;
  }
  return (size + 1) / 2;
}
