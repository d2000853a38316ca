import { rm } from "node:fs/promises";
import path from "node:path";
import type { Context } from "../context.ts";

type PhotoNames = { readonly id: string; readonly file: string; readonly thumb: string };

/** The name of the file as it came, kept only when asked. */
export function originalOf(id: string): string {
  return `${id}.original`;
}

/** Removes every file of a photo; those that are not there are no matter. */
export async function removeFiles(folder: string, photo: PhotoNames): Promise<void> {
  for (const name of [photo.file, photo.thumb, originalOf(photo.id)])
    await rm(path.join(folder, name), { force: true });
}

/**
 * Does something that may take lunches away, and afterwards removes the files of the photos that went
 * with them. Only what stood on record before and does not stand after is removed: a change that was
 * refused or taken back loses no file, and a photo added meanwhile is not looked at.
 */
export async function clearingPhotoFiles<Outcome>(
  { db }: Pick<Context, "db">,
  folder: string,
  change: () => Promise<Outcome>,
): Promise<Outcome> {
  const select = { id: true, file: true, thumb: true } as const;
  const before = await db.photo.findMany({ select });
  const outcome = await change();
  if (before.length === 0) return outcome;
  const left = new Set((await db.photo.findMany({ select: { id: true } })).map(({ id }) => id));
  for (const photo of before) if (!left.has(photo.id)) await removeFiles(folder, photo);
  return outcome;
}
