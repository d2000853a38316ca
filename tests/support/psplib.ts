import { existsSync, readdirSync, readFileSync } from "node:fs";
import type { SchedulingProblem } from "#lib/prep/index.ts";

const FOLDER = new URL("../../../shared/data/psplib/", import.meta.url);

/** One instance of the PSPLIB j30 set with its proven optimum. */
export type PsplibInstance = {
  readonly name: string;
  readonly problem: SchedulingProblem;
  readonly optimum: number;
};

/**
 * The PSPLIB instances beside the project, or none where that folder is not there.
 * Source: Kolisch & Sprecher 1996, EJOR 96:205–216; optima by Demeulemeester & Herroelen 1995.
 */
export function psplibInstances(): PsplibInstance[] {
  if (!existsSync(FOLDER)) return [];
  const optima = readFileSync(new URL("optima.csv", FOLDER), "utf8").trim().split("\n").slice(1);
  const present = new Set(readdirSync(FOLDER));
  return optima.flatMap((row) => {
    const [name = "", optimum = ""] = row.split(",");
    if (!present.has(name)) return [];
    const problem = readPsplib(readFileSync(new URL(name, FOLDER), "utf8"));
    return [{ name, problem, optimum: Number(optimum) }];
  });
}

/** Reads the single-mode PSPLIB text format: jobs with their successors, durations, requests and capacities. */
function readPsplib(text: string): SchedulingProblem {
  const lines = text.split("\n").map((line) => line.trim());
  const rowsAfter = (heading: string, skip: number): number[][] => {
    const first = lines.findIndex((line) => line.startsWith(heading)) + skip;
    const rest = lines.slice(first);
    const count = rest.findIndex((line) => !/^\d/.test(line));
    return rest.slice(0, count).map((line) => line.split(/\s+/).map(Number));
  };
  const named = (amounts: readonly number[]): Record<string, number> =>
    Object.fromEntries(amounts.map((amount, index) => [`R${index + 1}`, amount]));
  return {
    tasks: rowsAfter("REQUESTS/DURATIONS", 3).map(([job = 0, , duration = 0, ...demands]) => ({
      id: String(job),
      duration,
      demands: named(demands),
    })),
    precedences: rowsAfter("PRECEDENCE RELATIONS", 2).flatMap(([job = 0, , , ...successors]) =>
      successors.map((after) => ({ before: String(job), after: String(after), minLag: 0 })),
    ),
    capacities: named(rowsAfter("RESOURCEAVAILABILITIES", 2)[0] ?? []),
  };
}
