import { randomUUID } from "node:crypto";
import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import sharp from "sharp";
import { expect, onTestFinished, test } from "vitest";
import { mondayOf, weeksLater } from "#lib/calendar/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { removeEpisode } from "#lib/use-cases/edit-episode.ts";
import { clearingPhotoFiles } from "#lib/use-cases/photos/photo-files.ts";
import { addPhoto } from "#lib/use-cases/photos/photos.ts";
import { startSeries } from "#lib/use-cases/start-series.ts";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";
import { testContext } from "#tests/support/test-context.ts";

type Shelf = {
  readonly context: Context;
  readonly folder: string;
  readonly episodes: readonly string[];
};

/** The demo’s place with two weeks, each with a photo and its original: six files. */
async function twoWeeks(): Promise<Shelf> {
  const context = testContext();
  const folder = mkdtempSync(path.join(tmpdir(), "noonbook-photos-"));
  onTestFinished(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  await context.db.series.create({
    data: { id: 1, name: "Boxes", isDemo: true, startedOn: context.today },
  });
  const episodes: string[] = [];
  for (const number of [1, 2]) {
    const weekOf = weeksLater(mondayOf(context.today), number);
    const { id } = await context.db.episode.create({
      data: { number, weekOf, lunches: { create: { id: `l${number}`, date: weekOf } } },
    });
    episodes.push(id);
    const kept = await keepPhoto(context, folder, `l${number}`);
    expect(kept.ok).toBe(true);
  }
  expect(readdirSync(folder)).toHaveLength(6);
  return { context, folder, episodes };
}

async function keepPhoto(context: Context, folder: string, lunchId: string) {
  const bytes = await sharp({ create: { width: 60, height: 40, channels: 3, background: "red" } })
    .jpeg()
    .toBuffer();
  return addPhoto(context, folder, { id: randomUUID(), lunchId, bytes, keepOriginal: true });
}

test("with a removed week go the files of its photos, and of no other", async () => {
  const { context, folder, episodes } = await twoWeeks();
  const outcome = await clearingPhotoFiles(context, folder, () =>
    removeEpisode(context, episodes[0] ?? ""),
  );
  expect(outcome.ok).toBe(true);
  const [left, ...more] = await context.db.photo.findMany();
  expect(more).toEqual([]);
  const names = [left?.file, left?.thumb, `${left?.id}.original`].sort();
  expect(readdirSync(folder).sort()).toEqual(names);
});

test("a series that makes way leaves no photo on disk", async () => {
  const { context, folder } = await twoWeeks();
  const input = StartSeriesInput.parse({ name: "Our own" });
  const outcome = await clearingPhotoFiles(context, folder, () => startSeries(context, input));
  expect(outcome.ok).toBe(true);
  expect(readdirSync(folder)).toEqual([]);
});

test("a refused change loses no file", async () => {
  const { context, folder } = await twoWeeks();
  await context.db.series.update({ where: { id: 1 }, data: { isDemo: false } });
  const input = StartSeriesInput.parse({ name: "Another" });
  const outcome = await clearingPhotoFiles(context, folder, () => startSeries(context, input));
  expect(outcome.ok).toBe(false);
  expect(readdirSync(folder)).toHaveLength(6);
});

test("a change that breaks off loses no file, though it had deleted the rows", async () => {
  const { context, folder, episodes } = await twoWeeks();
  const broken = clearingPhotoFiles(context, folder, () =>
    context.db.$transaction(async (tx) => {
      await tx.episode.delete({ where: { id: episodes[0] ?? "" } });
      throw new Error("the lamp went out");
    }),
  );
  await expect(broken).rejects.toThrow("the lamp went out");
  expect(await context.db.photo.count()).toBe(2);
  expect(readdirSync(folder)).toHaveLength(6);
});

test("a photo added during the change is kept", async () => {
  const { context, folder, episodes } = await twoWeeks();
  await clearingPhotoFiles(context, folder, async () => {
    await keepPhoto(context, folder, "l2");
    return removeEpisode(context, episodes[0] ?? "");
  });
  expect(await context.db.photo.count()).toBe(2);
  expect(readdirSync(folder)).toHaveLength(6);
});
