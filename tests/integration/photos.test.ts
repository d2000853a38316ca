import { randomUUID } from "node:crypto";
import { mkdtempSync, readdirSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import sharp from "sharp";
import { expect, test } from "vitest";
import { mondayOf } from "#lib/calendar/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { squareCollage } from "#lib/use-cases/photos/arrange-pictures.ts";
import { cleanPicture } from "#lib/use-cases/photos/clean-picture.ts";
import {
  addPhoto,
  listPhotos,
  readPhoto,
  removePhoto,
  weekPicture,
} from "#lib/use-cases/photos/photos.ts";
import { exifTags, jpegSegments } from "#tests/support/jpeg-segments.ts";
import { testContext } from "#tests/support/test-context.ts";

const MAKE = 0x010f;
const ORIENTATION = 0x0112;
const GPS_LATITUDE = 2;

/** A phone's picture, 300 × 200 and lying on its side, the left half red, with place, device and time. */
async function phonePicture(): Promise<Buffer> {
  const red = await sharp({ create: { width: 150, height: 200, channels: 3, background: "red" } })
    .png()
    .toBuffer();
  return sharp({ create: { width: 300, height: 200, channels: 3, background: "blue" } })
    .composite([{ input: red, left: 0, top: 0 }])
    .jpeg()
    .withExif({
      IFD0: { Make: "Harbour Optics", Model: "Tin 3", DateTime: "2026:03:11 07:41:00" },
      IFD2: { DateTimeOriginal: "2026:03:11 07:41:00" },
      IFD3: { GPSLatitudeRef: "N", GPSLatitude: "54/1 19/1 0/1" },
    })
    .withXmp("<x:xmpmeta xmlns:x='adobe:ns:meta/'><place>Lighthouse Lane</place></x:xmpmeta>")
    .withMetadata({ orientation: 6 })
    .toBuffer();
}

async function lunchOf(context: Context): Promise<string> {
  const episode = await context.db.episode.create({
    data: { number: 1, weekOf: mondayOf(context.today) },
  });
  const lunch = await context.db.lunch.create({
    data: { episodeId: episode.id, date: context.today },
  });
  return lunch.id;
}

test("a kept picture is upright and holds nothing but the picture, read by its markers", async () => {
  const taken = await phonePicture();
  const before = jpegSegments(taken).filter(({ marker }) => marker === 0xffe1);
  const exif = before.find(({ body }) => body.toString("latin1", 0, 4) === "Exif");
  const tags = exif ? exifTags(exif.body) : { main: [], gps: [] };
  expect(tags.main).toEqual(expect.arrayContaining([MAKE, ORIENTATION]));
  expect(tags.gps).toContain(GPS_LATITUDE);

  const clean = await cleanPicture(taken);
  if (!clean.ok) throw new Error(clean.problem.kind);
  for (const kept of [clean.value.full, clean.value.thumb]) {
    // Only tables, frame and scan: no application data but JFIF's own, no comment (ITU-T T.81, B.1.1.3).
    for (const { marker, body } of jpegSegments(kept)) {
      expect(marker >= 0xffe1 && marker <= 0xffef).toBe(false);
      expect(marker).not.toBe(0xfffe);
      if (marker === 0xffe0) expect(body.toString("latin1", 0, 4)).toBe("JFIF");
    }
    expect(kept.includes("Harbour Optics")).toBe(false);
    expect(kept.includes("Lighthouse Lane")).toBe(false);
    expect(kept.includes("2026:03:11")).toBe(false);
  }
  expect(clean.value).toMatchObject({ width: 200, height: 300 });
  // Orientation 6 turns the left edge up: red must be on top.
  const { data, info } = await sharp(clean.value.full).raw().toBuffer({ resolveWithObject: true });
  const redAt = (y: number): number => data[(y * info.width + 100) * info.channels] ?? 0;
  expect(redAt(40)).toBeGreaterThan(200);
  expect(redAt(260)).toBeLessThan(60);
});

test("a picture too wide is made smaller, a small one is not blown up", async () => {
  const make = (width: number, height: number): Promise<Buffer> =>
    sharp({ create: { width, height, channels: 4, background: "#0af8" } })
      .png()
      .toBuffer();
  const wide = await cleanPicture(await make(5000, 1000));
  expect(wide).toMatchObject({ value: { width: 2048, height: 410 } });
  const small = await cleanPicture(await make(60, 40));
  expect(small).toMatchObject({ value: { width: 60, height: 40 } });
});

test.each([
  ["text", () => Promise.resolve(Buffer.from("not a picture")), "no-picture"],
  ["nothing", () => Promise.resolve(Buffer.alloc(0)), "no-picture"],
  ["half a JPEG's head", async () => (await phonePicture()).subarray(0, 40), "no-picture"],
  ["a file over 20 MB", () => Promise.resolve(Buffer.alloc(20 * 1024 * 1024 + 1)), "too-big"],
  [
    "a small file that claims 100 million pixels",
    () =>
      sharp({ create: { width: 10_000, height: 10_000, channels: 3, background: "white" } })
        .png({ compressionLevel: 9 })
        .toBuffer(),
    "no-picture",
  ],
])("%s is refused", async (_, make, kind) => {
  expect(await cleanPicture(await make())).toEqual({ ok: false, problem: { kind } });
});

test("files and record come and go together; the original stays only when asked", async () => {
  const context = testContext();
  const folder = mkdtempSync(path.join(tmpdir(), "noonbook-photos-"));
  const lunchId = await lunchOf(context);
  const bytes = await phonePicture();
  const photo = await addPhoto(context, folder, {
    id: randomUUID(),
    lunchId,
    bytes,
    keepOriginal: false,
  });
  const asked = await addPhoto(context, folder, {
    id: randomUUID(),
    lunchId,
    bytes,
    keepOriginal: true,
  });
  if (!photo.ok || !asked.ok || !photo.value || !asked.value)
    throw new Error("The photos were refused.");
  expect(readdirSync(folder)).toHaveLength(5);
  expect(readFileSync(path.join(folder, `${asked.value.id}.original`)).equals(bytes)).toBe(true);
  expect(await listPhotos(context, lunchId)).toHaveLength(2);
  expect((await readPhoto(context, folder, photo.value.thumb))?.length).toBeGreaterThan(100);
  expect(await readPhoto(context, folder, `${asked.value.id}.original`)).toBeUndefined();
  expect(await readPhoto(context, folder, "../noonbook.db")).toBeUndefined();

  await removePhoto(context, folder, asked.value.id);
  await removePhoto(context, folder, asked.value.id);
  expect(readdirSync(folder).sort()).toEqual([photo.value.thumb, photo.value.file].sort());
  const gone = await addPhoto(context, folder, {
    ...{ id: randomUUID(), lunchId: "none", bytes, keepOriginal: false },
  });
  expect(gone).toEqual({ ok: false, problem: { kind: "gone" } });
});

test("a photo sent again, or twice at once, is kept once; one that was taken back stays away", async () => {
  const context = testContext();
  const folder = mkdtempSync(path.join(tmpdir(), "noonbook-photos-"));
  const lunchId = await lunchOf(context);
  const sent = { id: randomUUID(), lunchId, bytes: await phonePicture(), keepOriginal: false };
  const outcomes = await Promise.all([1, 2, 3].map(() => addPhoto(context, folder, sent)));
  outcomes.push(await addPhoto(context, folder, sent));
  for (const outcome of outcomes)
    expect(outcome).toMatchObject({ ok: true, value: { id: sent.id } });
  expect(await listPhotos(context, lunchId)).toHaveLength(1);
  expect(readdirSync(folder)).toHaveLength(2);

  await removePhoto(context, folder, sent.id);
  expect(await addPhoto(context, folder, sent)).toEqual({ ok: true, value: undefined });
  expect(await listPhotos(context, lunchId)).toEqual([]);
  expect(readdirSync(folder)).toEqual([]);
});

test("a photo that comes after one was taken back still stands last", async () => {
  const context = testContext();
  const folder = mkdtempSync(path.join(tmpdir(), "noonbook-photos-"));
  const lunchId = await lunchOf(context);
  const bytes = await phonePicture();
  const ids = Array.from({ length: 4 }, () => randomUUID());
  const add = (id = "") => addPhoto(context, folder, { id, lunchId, bytes, keepOriginal: false });
  for (const id of ids.slice(0, 3)) await add(id);
  await removePhoto(context, folder, ids[0] ?? "");
  await add(ids[3]);
  expect((await listPhotos(context, lunchId)).map(({ id }) => id)).toEqual(ids.slice(1));
});

test("a week makes a contact sheet of five a row and a square, without metadata", async () => {
  const context = testContext();
  const folder = mkdtempSync(path.join(tmpdir(), "noonbook-photos-"));
  const lunchId = await lunchOf(context);
  const monday = mondayOf(context.today);
  expect(await weekPicture(context, folder, { monday, shape: "sheet" })).toBeUndefined();
  const bytes = await phonePicture();
  for (let turn = 0; turn < 6; turn += 1)
    await addPhoto(context, folder, { id: randomUUID(), lunchId, bytes, keepOriginal: false });
  const sheet = await weekPicture(context, folder, { monday, shape: "sheet" });
  const square = await weekPicture(context, folder, { monday, shape: "square" });
  if (!sheet || !square) throw new Error("No picture was made.");
  expect(await sharp(sheet).metadata()).toMatchObject({ width: 1600, height: 656 });
  expect(await sharp(square).metadata()).toMatchObject({ width: 1080, height: 1080 });
  for (const picture of [sheet, square])
    expect(jpegSegments(picture).some(({ marker }) => marker === 0xffe1)).toBe(false);
});

test.each([1, 2, 3, 5, 7, 9, 12])(
  "a square of %i pictures shows as many as nine, each once, and fills the square",
  async (count) => {
    const colours = Array.from({ length: count }, (_, index) => ({
      r: 20 + 20 * index,
      g: 0,
      b: 0,
    }));
    const pictures = await Promise.all(
      colours.map((background) =>
        sharp({ create: { width: 60, height: 40, channels: 3, background } })
          .png()
          .toBuffer(),
      ),
    );
    const square = await squareCollage(pictures);
    const { data, info } = await sharp(square).raw().toBuffer({ resolveWithObject: true });
    expect([info.width, info.height]).toEqual([1080, 1080]);
    const seen = new Map<number, number>();
    for (let at = 0; at < data.length; at += info.channels) {
      const [red = 0, green = 0] = [data[at], data[at + 1]];
      if (green < 30)
        seen.set(Math.round((red - 20) / 20), (seen.get(Math.round((red - 20) / 20)) ?? 0) + 1);
    }
    const large = [...seen].filter(([, pixels]) => pixels > 20_000).map(([index]) => index);
    expect(large.sort((a, b) => a - b)).toEqual(colours.slice(0, 9).map((_, index) => index));
    const covered = [...seen.values()].reduce((sum, pixels) => sum + pixels, 0);
    expect(covered / 1080 ** 2).toBeGreaterThan(0.9);
  },
);
