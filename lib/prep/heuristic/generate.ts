import type { Network } from "../network.ts";
import { numberAt } from "../solver/int-list.ts";

// Bound once: through a module loader every use of an imported name may cost a call.
const at = numberAt;

/**
 * Serial schedule generation (Kelley 1963; Kolisch 1996, EJOR 90:320–333): tasks one by one, each as
 * early as lags and capacities allow, the eligible task with the highest priority first. Also backwards
 * in time, which is what justification needs. For networks without cycles (no maximal lags).
 */
export class Generator {
  readonly tasks: number;
  private readonly network: Network;
  private readonly forward: readonly (readonly Neighbour[])[];
  private readonly backward: readonly (readonly Neighbour[])[];
  private readonly horizon: number;
  /** Use of resource r at time t: `use[r * horizon + t]`. */
  private readonly use: Int32Array;
  private readonly ready: Int32Array;
  private readonly waitingFor: Int32Array;

  constructor(network: Network, horizon: number) {
    this.network = network;
    this.tasks = network.tasks;
    this.horizon = horizon;
    this.use = new Int32Array(network.resources.length * horizon);
    this.ready = new Int32Array(network.tasks);
    this.waitingFor = new Int32Array(network.tasks);
    const { durations, arcs } = network;
    const next = (of: "from" | "to"): Neighbour[][] =>
      durations.map((_, task) =>
        arcs
          .filter((arc) => arc[of] === task && arc.from !== arc.to)
          .map(({ from, to, lag }) => ({
            task: of === "from" ? to : from,
            // Backwards in time a task "starts" at its end.
            lag: of === "from" ? lag : lag - (durations[from] ?? 0) + (durations[to] ?? 0),
          })),
      );
    this.forward = next("from");
    this.backward = next("to");
  }

  /** Starts by priority, and the end; backwards they count from the end. */
  generate(priority: Float64Array, isBackward: boolean, starts: Int32Array): number {
    const successors = isBackward ? this.backward : this.forward;
    this.use.fill(0);
    this.ready.fill(0);
    this.waitingFor.fill(0);
    for (const list of successors)
      for (const { task } of list) this.waitingFor[task] = at(this.waitingFor, task) + 1;
    let end = 0;
    for (let placed = 0; placed < this.tasks; placed += 1) {
      const task = this.nextTask(priority);
      this.waitingFor[task] = -1;
      const start = this.place(task, at(this.ready, task));
      starts[task] = start;
      end = Math.max(end, start + (this.network.durations[task] ?? 0));
      for (const { task: successor, lag } of successors[task] ?? []) {
        this.waitingFor[successor] = at(this.waitingFor, successor) - 1;
        this.ready[successor] = Math.max(at(this.ready, successor), start + lag);
      }
    }
    return end;
  }

  private nextTask(priority: Float64Array): number {
    let chosen = -1;
    for (let task = 0; task < this.tasks; task += 1) {
      if (at(this.waitingFor, task) !== 0) continue;
      if (chosen < 0 || (priority[task] ?? 0) > (priority[chosen] ?? 0)) chosen = task;
    }
    return chosen;
  }

  /** Occupies the earliest stretch from `ready` on that has room; returns its start. */
  private place(task: number, ready: number): number {
    const duration = this.network.durations[task] ?? 0;
    if (duration === 0) return ready;
    let start = ready;
    for (const [index, { demands }] of this.network.resources.entries())
      if ((demands[task] ?? 0) > 0 && this.blockedAt(task, index, start, duration) >= 0) {
        start = this.firstRoom(task, ready, duration);
        break;
      }
    for (const [index, { demands }] of this.network.resources.entries()) {
      const demand = demands[task] ?? 0;
      if (demand === 0) continue;
      const offset = index * this.horizon;
      for (let time = offset + start; time < offset + start + duration; time += 1)
        this.use[time] = at(this.use, time) + demand;
    }
    return start;
  }

  private firstRoom(task: number, ready: number, duration: number): number {
    let start = ready;
    for (let isMoved = true; isMoved;) {
      isMoved = false;
      for (let index = 0; index < this.network.resources.length; index += 1) {
        const blocked = this.blockedAt(task, index, start, duration);
        if (blocked < 0) continue;
        start = blocked + 1;
        isMoved = true;
      }
    }
    return start;
  }

  /** The last moment of a stretch at which a resource is too full for a task; −1: none. */
  private blockedAt(task: number, resource: number, start: number, duration: number): number {
    const { capacity = 0, demands = [] } = this.network.resources[resource] ?? {};
    const room = capacity - (demands[task] ?? 0);
    const offset = resource * this.horizon;
    for (let time = start + duration - 1; time >= start; time -= 1)
      if (at(this.use, offset + time) > room) return time;
    return -1;
  }
}

type Neighbour = { readonly task: number; readonly lag: number };
