import { mkdir, readFile, writeFile } from "node:fs/promises";
import path from "node:path";
import { groupBy, ok, refuse, type Result } from "#lib/base/index.ts";
import { addDays, type Day } from "#lib/calendar/index.ts";
import { inTransaction } from "#lib/db/index.ts";
import type { Context } from "../context.ts";
import { contactSheet, squareCollage } from "./arrange-pictures.ts";
import { cleanPicture, describePictureProblem, type PictureProblem } from "./clean-picture.ts";
import { originalOf, removeFiles } from "./photo-files.ts";

export type PhotoProblem = PictureProblem | { readonly kind: "gone" } | { readonly kind: "full" };
export type PhotoView = {
  readonly id: string;
  readonly file: string;
  readonly thumb: string;
  readonly width: number;
  readonly height: number;
};

/** A lunch holds no more photos than this. */
const PHOTOS_MOST = 24;

/** A photo as a phone sends it. */
export type GivenPhoto = {
  /** Made by the phone, so that a photo sent twice is kept once. */
  readonly id: string;
  readonly lunchId: string;
  readonly bytes: Buffer;
  readonly keepOriginal: boolean;
};

/**
 * Keeps a photo of a lunch: a clean copy and a thumbnail in `folder`, under names that say nothing. The
 * file as it came is kept only when asked, with all that it tells. A photo that was sent before changes
 * nothing, and one that was taken back since stays away: then there is none.
 */
export async function addPhoto(
  { db }: Context,
  folder: string,
  { id, lunchId, bytes, keepOriginal }: GivenPhoto,
): Promise<Result<PhotoView | undefined, PhotoProblem>> {
  const known = await findSent(db, id);
  if (known) return ok(known === "taken back" ? undefined : known);
  const lunch = await db.lunch.findUnique({
    where: { id: lunchId },
    select: { photos: { select: { position: true } } },
  });
  if (!lunch) return refuse({ kind: "gone" });
  if (lunch.photos.length >= PHOTOS_MOST) return refuse({ kind: "full" });
  const clean = await cleanPicture(bytes);
  if (!clean.ok) return clean;
  const { full, thumb, width, height } = clean.value;
  const names = { file: `${id}.jpg`, thumb: `${id}-thumb.jpg` };
  await mkdir(folder, { recursive: true });
  await writeFile(path.join(folder, names.file), full);
  await writeFile(path.join(folder, names.thumb), thumb);
  if (keepOriginal) await writeFile(path.join(folder, originalOf(id)), bytes);
  const position = 1 + Math.max(-1, ...lunch.photos.map((photo) => photo.position));
  // The row comes last: a file without a row is only waste, a row without a file a broken page.
  try {
    await db.photo.create({ data: { id, lunchId, ...names, width, height, position } });
  } catch (problem) {
    // Sent twice at once, the other was quicker: the files are the same.
    const other = await findSent(db, id);
    if (other && other !== "taken back") return ok(other);
    // The lunch may have gone while the picture was made.
    await removeFiles(folder, { id, ...names });
    throw problem;
  }
  return ok({ id, ...names, width, height });
}

const SHOWN = { id: true, file: true, thumb: true, width: true, height: true } as const;

async function findSent(db: Context["db"], id: string): Promise<PhotoView | "taken back" | null> {
  const photo = await db.photo.findUnique({ where: { id }, select: SHOWN });
  if (photo) return photo;
  return (await db.removedPhoto.count({ where: { id } })) > 0 ? "taken back" : null;
}

/** Takes a photo back, with every file of it. */
export async function removePhoto({ db }: Context, folder: string, id: string): Promise<void> {
  const photo = await inTransaction(db, async (tx) => {
    const row = await tx.photo.findUnique({ where: { id } });
    if (!row) return null;
    await tx.photo.delete({ where: { id } });
    await tx.removedPhoto.create({ data: { id, lunchId: row.lunchId } });
    return row;
  });
  if (photo) await removeFiles(folder, photo);
}

/** The bytes of a photo or thumbnail on record, or undefined. */
export async function readPhoto(
  { db }: Context,
  folder: string,
  name: string,
): Promise<Buffer | undefined> {
  const photo = await db.photo.findFirst({ where: { OR: [{ file: name }, { thumb: name }] } });
  return photo ? readFile(path.join(folder, name)).catch(() => undefined) : undefined;
}

/** Photos of a lunch in their order. */
export async function listPhotos({ db }: Context, lunchId: string): Promise<PhotoView[]> {
  return db.photo.findMany({
    where: { lunchId },
    orderBy: [{ position: "asc" }, { id: "asc" }],
    select: SHOWN,
  });
}

/** All photos of a week as one picture for a post, or undefined when there is none. */
export async function weekPicture(
  { db }: Context,
  folder: string,
  { monday, shape }: { readonly monday: Day; readonly shape: "sheet" | "square" },
): Promise<Buffer | undefined> {
  const photos = await db.photo.findMany({
    where: { lunch: { date: { gte: monday, lte: addDays(monday, 6) } } },
    orderBy: [{ lunch: { date: "asc" } }, { position: "asc" }],
    select: { file: true, lunchId: true },
  });
  const chosen = shape === "sheet" ? photos : dayByDay(photos);
  const read = await Promise.all(
    chosen.map(({ file }) => readFile(path.join(folder, file)).catch(() => undefined)),
  );
  const pictures = read.filter((picture) => picture !== undefined);
  if (pictures.length === 0) return undefined;
  return shape === "sheet" ? contactSheet(pictures) : squareCollage(pictures);
}

/** The first photo of each day, then the second of each, and so on: a post shows the whole week. */
function dayByDay<Photo extends { readonly lunchId: string }>(photos: readonly Photo[]): Photo[] {
  const days = [...groupBy(photos, ({ lunchId }) => lunchId).values()];
  const turns = Math.max(0, ...days.map(({ length }) => length));
  return Array.from({ length: turns }, (_, turn) => days.flatMap((own) => own[turn] ?? [])).flat();
}

/** Words for a refusal. */
export function describePhotoProblem(problem: PhotoProblem): string {
  switch (problem.kind) {
    case "gone":
      return "This lunch was removed meanwhile.";
    case "full":
      return `A lunch holds ${PHOTOS_MOST} photos. Remove one first.`;
    case "too-big":
    case "no-picture":
      return describePictureProblem(problem);
  }
}
