import { z } from "zod";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import { inTransaction } from "#lib/db/index.ts";
import type { Context } from "./context.ts";

export const LockEpisodeInput = z.object({
  episodeId: z.string().min(1).max(60),
  lock: z.boolean(),
});
export type LockEpisodeInput = z.infer<typeof LockEpisodeInput>;
export type LockProblem =
  { readonly kind: "gone" } | { readonly kind: "empty-lunch"; readonly date: string };

/** Locks a week, or takes the lock off. A week with an empty lunch stays pencilled. */
export async function lockEpisode(
  { db, now }: Context,
  { episodeId, lock }: LockEpisodeInput,
): Promise<Result<undefined, LockProblem>> {
  return inTransaction(db, async (tx) => {
    const episode = await tx.episode.findUnique({
      where: { id: episodeId },
      include: {
        lunches: { orderBy: { date: "asc" }, include: { _count: { select: { items: true } } } },
      },
    });
    if (!episode) return refuse({ kind: "gone" });
    const empty = episode.lunches.find((lunch) => lunch._count.items === 0);
    if (lock && empty) return refuse({ kind: "empty-lunch", date: empty.date });
    await tx.episode.update({ where: { id: episodeId }, data: { lockedAt: lock ? now : null } });
    return ok(undefined);
  });
}

/** Words for a refusal. */
export function describeLockProblem(problem: LockProblem): string {
  switch (problem.kind) {
    case "gone":
      return "This week was removed meanwhile.";
    case "empty-lunch":
      return `The lunch of ${problem.date} is still empty. Compose it, then lock the week.`;
  }
}
