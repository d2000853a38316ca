import { numberAt } from "./int-list.ts";
import type { Trail } from "./trail.ts";

// Bound once: through a module loader every use of an imported name may cost a call.
const at = numberAt;

/** What a propagator asks of the engine: bounds to read, and derived bounds with their reasons to write. */
export type Derivations = {
  readonly trail: Trail;
  readonly openNote: () => number;
  readonly note: (side: number, value: number) => void;
  readonly pushNoted: (side: number, value: number, note: number) => boolean;
  readonly failNoted: (note: number) => false;
};

/**
 * One renewable resource by time-table reasoning with pointwise explanations (Schutt et al. 2011,
 * Constraints 16:250–282, §3): where the parts of the tasks that must run pile up, others can't start.
 */
export class Cumulative {
  readonly tasks: Int32Array;
  readonly durations: Int32Array;
  readonly demands: Int32Array;
  readonly capacity: number;
  private readonly members: ReadonlySet<number>;
  // The profile of compulsory parts: height[i] from time[i] to time[i + 1].
  private readonly byLatestStart: Int32Array;
  private readonly byEarliestEnd: Int32Array;
  private readonly latestStart: Int32Array;
  private readonly earliestEnd: Int32Array;
  private readonly time: Int32Array;
  private readonly height: Int32Array;
  private pieces = 0;

  constructor(
    tasks: readonly { task: number; duration: number; demand: number }[],
    capacity: number,
  ) {
    this.tasks = Int32Array.from(tasks, ({ task }) => task);
    this.durations = Int32Array.from(tasks, ({ duration }) => duration);
    this.demands = Int32Array.from(tasks, ({ demand }) => demand);
    this.capacity = capacity;
    this.members = new Set(this.tasks);
    this.byLatestStart = Int32Array.from(tasks.keys());
    this.byEarliestEnd = Int32Array.from(tasks.keys());
    this.latestStart = new Int32Array(tasks.length);
    this.earliestEnd = new Int32Array(tasks.length);
    this.time = new Int32Array(2 * tasks.length + 1);
    this.height = new Int32Array(2 * tasks.length + 1);
  }

  hasTask(task: number): boolean {
    return this.members.has(task);
  }

  /** False on conflict. */
  propagate(engine: Derivations): boolean {
    this.buildProfile(engine.trail.bound);
    for (let piece = 0; piece < this.pieces; piece += 1)
      if (at(this.height, piece) > this.capacity) return this.fail(engine, at(this.time, piece));
    if (this.pieces === 0) return true;
    for (let index = 0; index < this.tasks.length; index += 1) {
      const task = at(this.tasks, index);
      if (engine.trail.isFixed(task)) continue;
      if (!this.delay(engine, index) || !this.advance(engine, index)) return false;
    }
    return true;
  }

  private buildProfile(bound: Int32Array): void {
    const count = this.tasks.length;
    for (let index = 0; index < count; index += 1) {
      const task = at(this.tasks, index);
      this.latestStart[index] = -at(bound, 2 * task + 1);
      this.earliestEnd[index] = at(bound, 2 * task) + at(this.durations, index);
    }
    sortBy(this.byLatestStart, this.latestStart);
    sortBy(this.byEarliestEnd, this.earliestEnd);
    let [begun, ended, height] = [0, 0, 0];
    this.pieces = 0;
    while (ended < count) {
      const starting = begun < count ? at(this.byLatestStart, begun) : -1;
      const ending = at(this.byEarliestEnd, ended);
      const startsAt = starting < 0 ? Infinity : at(this.latestStart, starting);
      const endsAt = at(this.earliestEnd, ending);
      const isStart = startsAt < endsAt;
      const index = isStart ? starting : ending;
      if (isStart) begun += 1;
      else ended += 1;
      if (at(this.latestStart, index) >= at(this.earliestEnd, index)) continue;
      height += isStart ? at(this.demands, index) : -at(this.demands, index);
      this.mark(isStart ? startsAt : endsAt, height);
    }
  }

  private mark(time: number, height: number): void {
    if (this.pieces > 0 && at(this.time, this.pieces - 1) === time) this.pieces -= 1;
    this.time[this.pieces] = time;
    this.height[this.pieces] = height;
    this.pieces += 1;
  }

  /** True when a piece leaves no room for a task whose own part is not in it. */
  private isTooHigh(piece: number, index: number): boolean {
    if (at(this.height, piece) + at(this.demands, index) <= this.capacity) return false;
    const time = at(this.time, piece);
    return time < at(this.latestStart, index) || time >= at(this.earliestEnd, index);
  }

  /** Moves a task's earliest start past pieces that leave it no room. */
  private delay(engine: Derivations, index: number): boolean {
    const side = 2 * at(this.tasks, index);
    const duration = at(this.durations, index);
    for (let piece = 0; piece < this.pieces - 1; piece += 1) {
      const end = at(this.time, piece + 1);
      let earliest = at(engine.trail.bound, side);
      if (end <= earliest) continue;
      if (at(this.time, piece) >= earliest + duration) break;
      if (!this.isTooHigh(piece, index)) continue;
      while (earliest < end) {
        const moment = Math.min(end, earliest + duration) - 1;
        const note = this.noteMoment(engine, moment, index);
        engine.note(side, moment - duration + 1);
        if (!engine.pushNoted(side, moment + 1, note)) return false;
        earliest = moment + 1;
      }
    }
    return true;
  }

  /** Moves a task's latest start before pieces that leave it no room. */
  private advance(engine: Derivations, index: number): boolean {
    const side = 2 * at(this.tasks, index) + 1;
    const duration = at(this.durations, index);
    for (let piece = this.pieces - 2; piece >= 0; piece -= 1) {
      const begin = at(this.time, piece);
      let latest = -at(engine.trail.bound, side);
      if (begin >= latest + duration) continue;
      if (at(this.time, piece + 1) <= latest) break;
      if (!this.isTooHigh(piece, index)) continue;
      while (latest + duration > begin) {
        const moment = Math.max(begin, latest);
        const note = this.noteMoment(engine, moment, index);
        engine.note(side, -moment);
        if (!engine.pushNoted(side, duration - moment, note)) return false;
        latest = moment - duration;
      }
    }
    return true;
  }

  private fail(engine: Derivations, moment: number): false {
    return engine.failNoted(this.noteMoment(engine, moment, -1));
  }

  /** Notes why the tasks running at a moment leave no room for `except` (−1: overfill by themselves). */
  private noteMoment(engine: Derivations, moment: number, except: number): number {
    const note = engine.openNote();
    let spare = (except < 0 ? 0 : at(this.demands, except)) - this.capacity;
    for (let index = 0; index < this.tasks.length; index += 1)
      if (index !== except && this.covers(index, moment)) spare += at(this.demands, index);
    for (let index = 0; index < this.tasks.length; index += 1) {
      if (index === except || !this.covers(index, moment)) continue;
      // Who is not needed for the overload is left out.
      if (at(this.demands, index) < spare) {
        spare -= at(this.demands, index);
        continue;
      }
      const task = at(this.tasks, index);
      engine.note(2 * task, moment - at(this.durations, index) + 1);
      engine.note(2 * task + 1, -moment);
    }
    return note;
  }

  private covers(index: number, moment: number): boolean {
    return at(this.latestStart, index) <= moment && at(this.earliestEnd, index) > moment;
  }
}

/** Insertion sort by key: the order hardly changes from one call to the next. */
function sortBy(order: Int32Array, key: Int32Array): void {
  for (let index = 1; index < order.length; index += 1) {
    const moved = at(order, index);
    const value = at(key, moved);
    let place = index - 1;
    while (place >= 0 && at(key, at(order, place)) > value) {
      order[place + 1] = at(order, place);
      place -= 1;
    }
    order[place + 1] = moved;
  }
}
