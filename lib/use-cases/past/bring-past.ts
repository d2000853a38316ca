import { ok, refuse, type Result } from "#lib/base/index.ts";
import { inTransaction } from "#lib/db/index.ts";
import type { Context } from "../context.ts";
import { layPast } from "./lay-past.ts";
import type { PastInput } from "./past.input.ts";
import { reportPast, type PastReport } from "./report-past.ts";
import { writePast } from "./write-past.ts";

export type PastProblem = { readonly kind: "no-series" } | { readonly kind: "has-errors" };

/** The dry run: every match, doubt and error of a file by line, and what it would add. Writes nothing. */
export async function lookAtPast({ db, today }: Context, input: PastInput): Promise<PastReport> {
  return reportPast(await layPast(db, today, input));
}

/**
 * Brings a file of earlier weeks in, all or nothing. A second time the same file changes nothing.
 * Refuses while any line has an error, and before there is a series.
 */
export async function bringPast(
  { db, today, now }: Context,
  input: PastInput,
): Promise<Result<PastReport, PastProblem>> {
  return inTransaction(db, async (tx) => {
    if ((await tx.series.count()) === 0) return refuse({ kind: "no-series" });
    const laid = await layPast(tx, today, input);
    const report = reportPast(laid);
    if (report.errors > 0) return refuse({ kind: "has-errors" });
    const phrases = laid.phrases.map(({ named }) => named);
    await writePast(tx, laid.plan, laid.ground, phrases, now);
    return ok(report);
  });
}

/** Words for a refusal. */
export function describePastProblem({ kind }: PastProblem): string {
  switch (kind) {
    case "no-series":
      return "There is no series yet. Start one first.";
    case "has-errors":
      return "Some lines have errors, so nothing was written. Look at the file again.";
  }
}
