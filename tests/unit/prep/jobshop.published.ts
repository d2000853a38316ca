import type { SchedulingProblem } from "#lib/prep/index.ts";

/** Fisher & Thompson 1963, "Probabilistic learning combinations of local job-shop scheduling rules", 6 × 6; optimum 55. */
export const FT06 = [
  "2 1 0 3 1 6 3 7 5 3 4 6",
  "1 8 2 5 4 10 5 10 0 10 3 4",
  "2 5 3 4 5 8 0 9 1 1 4 7",
  "1 5 0 5 2 5 3 3 4 8 5 9",
  "2 9 1 3 4 5 5 4 0 3 3 1",
  "1 3 3 3 5 9 0 10 4 4 2 1",
];

/** Lawrence 1984, "Resource constrained project scheduling" (supplement), first 10 × 5 instance, la01; optimum 666. */
export const LA01 = [
  "1 21 0 53 4 95 3 55 2 34",
  "0 21 3 52 4 16 2 26 1 71",
  "3 39 4 98 1 42 2 31 0 12",
  "1 77 0 55 4 79 2 66 3 77",
  "0 83 3 34 2 64 1 19 4 37",
  "1 54 2 43 4 79 0 92 3 62",
  "3 69 4 77 1 87 2 87 0 93",
  "2 38 0 60 1 41 3 24 4 83",
  "3 17 1 49 4 25 0 44 2 98",
  "4 77 3 79 2 43 1 75 0 96",
];

/** A job shop as a project: each row lists a job's operations as machine, duration pairs in order. */
export function jobShop(rows: readonly string[]): SchedulingProblem {
  const jobs = rows.map((row) => {
    const numbers = row.trim().split(/\s+/).map(Number);
    return Array.from({ length: numbers.length / 2 }, (_, step) => ({
      machine: `M${numbers[2 * step] ?? 0}`,
      duration: numbers[2 * step + 1] ?? 0,
    }));
  });
  const machines = new Set(jobs.flatMap((job) => job.map(({ machine }) => machine)));
  return {
    tasks: jobs.flatMap((job, j) =>
      job.map(({ machine, duration }, step) => ({
        id: `${j}/${step}`,
        duration,
        demands: { [machine]: 1 },
      })),
    ),
    precedences: jobs.flatMap((job, j) =>
      job.slice(1).map((_, step) => ({
        before: `${j}/${step}`,
        after: `${j}/${step + 1}`,
        minLag: 0,
      })),
    ),
    capacities: Object.fromEntries([...machines].map((machine) => [machine, 1])),
  };
}
