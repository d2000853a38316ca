import { ok, refuse, type Result } from "#lib/base/index.ts";
import { inTransaction, publishDraft, readDrafts, writeDraft } from "#lib/db/index.ts";
import { DRAFT_KINDS, PRIVATE_KINDS } from "#lib/drafts/index.ts";
import type { Context } from "./context.ts";
import { readCopyDeskGround } from "./copy-desk-ground.ts";
import { writtenOf } from "./piece-of.ts";
import { composePiece, storedPiece, templateVersion } from "./piece-view.ts";
import { publishedOf } from "./published-pieces.ts";
import type { KeepPromiseInput, PublishInput } from "./publish-episode.input.ts";

export type PublishProblem = {
  readonly kind: "gone" | "changed-meanwhile" | "to-come" | "unpacked";
};

/**
 * Marks an episode as published and keeps every public piece as it stands, so that a later change of
 * the records is known to be one. Refuses a day to come, and an episode of which nothing was packed.
 */
export async function publishEpisode(
  { db, today, now }: Context,
  { monday, revision, on, url }: PublishInput,
): Promise<Result<undefined, PublishProblem>> {
  if (on > today) return refuse({ kind: "to-come" });
  return inTransaction(db, async (tx) => {
    const ground = await readCopyDeskGround(tx, monday, today);
    if (!ground) return refuse({ kind: "gone" });
    const { episode } = ground;
    if (episode.revision !== revision) return refuse({ kind: "changed-meanwhile" });
    if (!episode.lunches.some((lunch) => lunch.isPacked)) return refuse({ kind: "unpacked" });
    for (const kind of DRAFT_KINDS.filter((one) => !PRIVATE_KINDS.has(one))) {
      const lunches = kind === "lunch-post" ? episode.lunches.map(({ id }) => id) : [null];
      for (const lunchId of lunches) {
        const stored = storedPiece(ground, kind, lunchId);
        if (stored) continue;
        const composed = composePiece(ground, kind, lunchId);
        if (!composed.ok || composed.value.text === "") continue;
        await writeDraft(tx, undefined, {
          ...{ episodeId: episode.id, kind, lunchId, body: composed.value.text, edited: false },
          templateVersion: templateVersion(ground, kind),
          written: writtenOf(composed.value, { salt: ground.salt }),
        });
      }
    }
    for (const draft of await readDrafts(tx, episode.id)) {
      const written = { ...draft.written, published: publishedOf(draft) };
      await publishDraft(tx, { id: draft.id, written }, on);
    }
    await tx.episode.update({
      where: { id: episode.id },
      data: { publishedAt: now, publishedOn: on, url, revision: { increment: 1 } },
    });
    return ok(undefined);
  });
}

/** Takes the mark back: nothing else changes. */
export async function unpublishEpisode(
  { db }: Context,
  { monday, revision }: Pick<PublishInput, "monday" | "revision">,
): Promise<Result<undefined, PublishProblem>> {
  return inTransaction(db, async (tx) => {
    const episode = await tx.episode.findUnique({ where: { weekOf: monday } });
    if (!episode) return refuse({ kind: "gone" });
    if (episode.revision !== revision) return refuse({ kind: "changed-meanwhile" });
    await tx.draft.updateMany({ where: { episodeId: episode.id }, data: { publishedOn: null } });
    await tx.episode.update({
      where: { id: episode.id },
      data: { publishedAt: null, publishedOn: null, url: "", revision: { increment: 1 } },
    });
    return ok(undefined);
  });
}

/** Ticks a promise to viewers as kept today, or opens it again. Refuses one that is gone. */
export async function keepPromise(
  { db, today }: Context,
  { id, isKept }: KeepPromiseInput,
): Promise<Result<undefined, PublishProblem>> {
  const { count } = await db.viewerPromise.updateMany({
    where: { id },
    data: { keptOn: isKept ? today : null },
  });
  return count === 0 ? refuse({ kind: "gone" }) : ok(undefined);
}

/** Words for a refusal. */
export function describePublishProblem({ kind }: PublishProblem): string {
  switch (kind) {
    case "gone":
      return "It was removed meanwhile.";
    case "changed-meanwhile":
      return "This episode was changed in another tab meanwhile. Open the page anew.";
    case "to-come":
      return "That day is still to come. Mark it once it is out.";
    case "unpacked":
      return "Nothing of this week was packed yet: shut a lid on the call sheet first.";
  }
}
