import type { MiseStep } from "#lib/use-cases/load-mise.ts";

/** A row of the timeline: a cook, an appliance, or what runs by itself. */
export type TimelineRow = {
  readonly name: string;
  readonly bars: readonly { readonly step: MiseStep; readonly number: number }[];
};

type Bar = TimelineRow["bars"][number];

/** The rows of a timeline: cooks first, then appliances, then what runs by itself, each without overlap. */
export function timelineRows(steps: readonly MiseStep[], firstNumber: number): TimelineRow[] {
  const cooks = new Map<string, Bar[]>();
  const appliances = new Map<string, Bar[]>();
  const alone: Bar[][] = [];
  const hasTwo = new Set(steps.flatMap((step) => (step.unit ? [step.appliance] : [])));
  const cookCount = Math.max(0, ...steps.map(({ cook }) => (cook ?? 0) + 1));
  steps.forEach((step, index) => {
    const bar = { step, number: firstNumber + index };
    if (step.cook !== null) add(cooks, cookCount > 1 ? `Cook ${step.cook + 1}` : "Cook", bar);
    if (step.unit !== null) {
      const count = hasTwo.has(step.appliance) ? ` ${step.unit + 1}` : "";
      add(appliances, `${nameOf(step.appliance)}${count}`, bar);
    }
    if (step.cook !== null || step.unit !== null) return;
    const free = alone.find((row) => (row.at(-1)?.step.to ?? 0) <= step.from);
    if (free) free.push(bar);
    else alone.push([bar]);
  });
  const sorted = (rows: Map<string, Bar[]>): TimelineRow[] =>
    [...rows].sort(([a], [b]) => (a < b ? -1 : 1)).map(([name, bars]) => ({ name, bars }));
  return [
    ...sorted(cooks),
    ...sorted(appliances),
    ...alone.map((bars, index) => ({ name: index === 0 ? "By itself" : "", bars })),
  ];
}

function add(rows: Map<string, Bar[]>, name: string, bar: Bar): void {
  rows.set(name, [...(rows.get(name) ?? []), bar]);
}

function nameOf(appliance: string): string {
  return `${appliance.charAt(0).toUpperCase()}${appliance.slice(1)}`.replace("-", " ");
}

/** The stretch of time a timeline shows, and where its marks stand, in minutes of the day. */
export type TimelineScale = {
  readonly from: number;
  readonly to: number;
  readonly marks: readonly number[];
};

const EVERY = [5, 10, 15, 30, 60, 120] as const;
const MARKS_MAX = 7;

/**
 * A scale in round minutes. What runs by itself long after the last hands are done is cut off: it would
 * squeeze everything else.
 */
export function timelineScale(steps: readonly MiseStep[], until?: number): TimelineScale {
  const first = Math.min(...steps.map(({ from }) => from));
  const busy = Math.max(...steps.map((step) => (step.cook === null ? step.from + 5 : step.to)));
  const last = Math.max(until ?? -Infinity, ...steps.map(({ to }) => Math.min(to, busy + 30)));
  const every = EVERY.find((minutes) => (last - first) / minutes <= MARKS_MAX) ?? 240;
  const from = Math.floor(first / every) * every;
  const to = Math.max(from + every, Math.ceil(last / every) * every);
  const marks = Array.from({ length: (to - from) / every + 1 }, (_, index) => from + index * every);
  return { from, to, marks };
}
