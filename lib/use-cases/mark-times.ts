import { ok, refuse, type Result } from "#lib/base/index.ts";
import { inTransaction } from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import type { MarkTimesInput } from "./mark-times.input.ts";

export type MarkProblem = { readonly kind: "gone" | "changed-meanwhile" | "screen-too-long" };

/**
 * Keeps the marked times of an episode in the place of earlier ones. Refuses a child that is on screen
 * longer than the episode runs.
 */
export function markTimes(
  { db }: Context,
  { monday, revision, runtime, chapters, screen }: MarkTimesInput,
): Promise<Result<undefined, MarkProblem>> {
  return inTransaction(db, async (tx) => {
    const episode = await tx.episode.findUnique({ where: { weekOf: monday } });
    if (!episode) return refuse({ kind: "gone" });
    if (episode.revision !== revision) return refuse({ kind: "changed-meanwhile" });
    if (runtime !== null && screen.some(({ time }) => time !== null && time > runtime)) {
      return refuse({ kind: "screen-too-long" });
    }
    const episodeId = episode.id;
    await tx.chapterMark.deleteMany({ where: { episodeId } });
    await tx.screenTime.deleteMany({ where: { episodeId } });
    const marks = [...chapters].sort((one, other) => one.time - other.time);
    for (const { time, title } of marks) {
      await tx.chapterMark.create({ data: { episodeId, seconds: time, title } });
    }
    for (const { childId, time } of screen) {
      if (time !== null)
        await tx.screenTime.create({ data: { episodeId, childId, seconds: time } });
    }
    await tx.episode.update({
      where: { id: episodeId },
      data: { runtimeSeconds: runtime, revision: { increment: 1 } },
    });
    return ok(undefined);
  });
}

/** Words for a refusal. */
export function describeMarkProblem({ kind }: MarkProblem): string {
  switch (kind) {
    case "gone":
      return "This episode was removed meanwhile.";
    case "changed-meanwhile":
      return "This episode was changed in another tab meanwhile. What you typed is still here: open the page anew to compare.";
    case "screen-too-long":
      return "A child cannot be on screen longer than the episode runs.";
  }
}
