import type { EpisodeRecord } from "#lib/db/index.ts";

export type Stage = "pencilled" | "locked" | "shot" | "published";

/**
 * The stage of an episode, derived and never stored: published when marked so, shot when every
 * lunch was packed, locked when locked, else pencilled.
 */
export function stageOf(
  episode: Pick<EpisodeRecord, "publishedAt" | "lockedAt" | "lunches">,
): Stage {
  if (episode.publishedAt) return "published";
  if (episode.lunches.length > 0 && episode.lunches.every((lunch) => lunch.isPacked)) return "shot";
  return episode.lockedAt ? "locked" : "pencilled";
}
