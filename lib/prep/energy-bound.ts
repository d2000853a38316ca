import type { Network } from "./network.ts";

/**
 * A bound on the makespan: all tasks that can't start before some head and need some tail after them
 * share a resource; head + their energy ÷ capacity + tail. With capacity 1 this is the preemptive
 * one-machine bound (Carlier 1982, EJOR 11:42–47).
 */
export function energyBound(network: Network): number {
  let bound = network.criticalPath;
  for (const { capacity, demands } of network.resources) {
    const users = network.durations.flatMap((duration, task) => {
      const energy = duration * (demands[task] ?? 0);
      const after = network.tail(task) - duration;
      return energy > 0 ? [{ energy, head: network.earliest(task), after }] : [];
    });
    users.sort((a, b) => b.head - a.head);
    for (const { after: tail } of users) {
      let energy = 0;
      for (const { head, after, energy: added } of users) {
        if (after < tail) continue;
        energy += added;
        bound = Math.max(bound, head + Math.ceil(energy / capacity) + tail);
      }
    }
  }
  return bound;
}
