import { ok, refuse, type Result } from "#lib/base/index.ts";
import {
  copyDatabase,
  inTransaction,
  readWhole,
  replaceWhole,
  WholeSeries,
  type WholeProblem,
} from "#lib/db/index.ts";
import type { Context } from "../context.ts";

export type BringWholeProblem = WholeProblem | { readonly kind: "no-file" };

/** The whole series as the text of one file: foods, household, weeks, verdicts, drafts, settings. */
export async function exportWhole({ db }: Context): Promise<string> {
  return JSON.stringify(await inTransaction(db, readWhole));
}

/**
 * Puts the series of a file in the place of the one that stands, all or nothing. A copy of the database
 * is written to `copyTo` first.
 */
export async function bringWhole(
  { db }: Context,
  text: string,
  copyTo: string,
): Promise<Result<undefined, BringWholeProblem>> {
  const whole = parseWhole(text);
  if (!whole) return refuse({ kind: "no-file" });
  await copyDatabase(db, copyTo);
  try {
    return await inTransaction(db, async (tx) => {
      const problem = await replaceWhole(tx, whole);
      // Throwing takes the whole transaction back.
      if (problem) throw new Unfit(problem);
      return ok(undefined);
    });
  } catch (thrown) {
    if (thrown instanceof Unfit) return refuse(thrown.problem);
    throw thrown;
  }
}

/** Words for a refusal. */
export function describeWholeProblem(problem: BringWholeProblem): string {
  switch (problem.kind) {
    case "no-file":
      return "This is no series that Noonbook wrote. Choose a file from “Everything as one file”.";
    case "newer":
      return "This file was written by a newer Noonbook. Update this one first.";
    case "unknown":
      return `This file holds “${problem.what}”, which this Noonbook does not know.`;
    case "does-not-fit":
      return "Something in this file points at what is not in it, so nothing was changed.";
  }
}

class Unfit extends Error {
  readonly problem: WholeProblem;
  constructor(problem: WholeProblem) {
    super(problem.kind);
    this.problem = problem;
  }
}

function parseWhole(text: string): WholeSeries | undefined {
  try {
    return WholeSeries.parse(JSON.parse(text));
  } catch {
    return undefined;
  }
}
