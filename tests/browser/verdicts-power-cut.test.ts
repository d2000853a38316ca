import { randomUUID } from "node:crypto";
import { mkdtempSync, readdirSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import Database from "libsql";
import sharp from "sharp";
import { afterAll, beforeAll, expect, test } from "vitest";
import { randomFrom } from "#lib/base/index.ts";
import { openBrowser, openPage } from "#tests/support/browser.ts";
import { startServer, type RunningServer } from "#tests/support/server.ts";

const ENTRIES = 200;
const FACTS = 36;
const PHOTOS = 8;
const CUTS = 9;
const FACTS_STANDING = `SELECT "minutesUsed", "hard", "pickups" FROM "Lunch" WHERE "date" = '2026-03-11'`;
const folder = mkdtempSync(path.join(tmpdir(), "noonbook-cut-"));
let server: RunningServer;

beforeAll(async () => {
  server = await startServer("2026-03-11", folder);
  const browser = await openBrowser();
  const { page } = await openPage(browser);
  await page.goto(`${server.url}/welcome`);
  await page.getByRole("button", { name: /demo/i }).click();
  await page.getByRole("heading", { name: "March 2026" }).waitFor();
  await browser.close();
});
afterAll(() => {
  server.stop();
});

type Entry = {
  readonly id: string;
  readonly itemId: string;
  readonly childId: string;
  readonly device: string;
  readonly baseRevision: number;
  readonly madeAt: string;
  readonly change: { readonly eaten: number };
};
/** Entries of one kind that a phone sends, and how: the ids of those that were acknowledged come back. */
type Errand = {
  readonly ids: readonly string[];
  readonly send: (ids: readonly string[]) => Promise<readonly string[]>;
};

function rows<Row>(sql: string): Row[] {
  const db = new Database(path.join(folder, "noonbook.db"), { readonly: true });
  try {
    return db.prepare(sql).all() as Row[];
  } finally {
    db.close();
  }
}

/** Each phone logs its own child, over the same items, several times an item. */
function entriesOf(device: string, childId: string, items: readonly string[]): Entry[] {
  return Array.from({ length: ENTRIES / 2 }, (_, index) => ({
    ...{ id: randomUUID(), itemId: items[index % items.length] ?? "", childId, device },
    baseRevision: 0,
    madeAt: madeAt(index),
    change: { eaten: (index * 7) % 5 },
  }));
}

/** Facts of one day, the three fields in turn. */
function factsOf(device: string, lunchId: string) {
  return Array.from({ length: FACTS / 2 }, (_, index) => ({
    ...{ id: randomUUID(), lunchId, device, baseRevision: 0, madeAt: madeAt(index) },
    change: [{ minutes: index }, { hard: `hard ${index}` }, { pickups: `shot ${index}` }][
      index % 3
    ],
  }));
}

function madeAt(index: number): string {
  return new Date(Date.UTC(2026, 2, 11, 15, 0, index)).toISOString();
}

/** Entries that go as JSON, some at a time. */
function inBatches(address: string, all: readonly { readonly id: string }[]): Errand {
  return {
    ids: all.map(({ id }) => id),
    send: async (ids) => {
      const entries = ids.flatMap((id) => all.find((entry) => entry.id === id) ?? []);
      const body = JSON.stringify({ entries });
      const response = await fetch(server.url + address, { method: "POST", body });
      const { answers } = (await response.json()) as { answers: readonly { kind: string }[] };
      return ids.filter((_, index) => answers[index]?.kind === "kept");
    },
  };
}

/** Photos of one lunch, one at a time. */
function photosOf(lunchId: string, picture: Buffer<ArrayBuffer>): Errand {
  return {
    ids: Array.from({ length: PHOTOS / 2 }, () => randomUUID()),
    send: async ([id = ""]) => {
      const body = new FormData();
      body.set("id", id);
      body.set("lunchId", lunchId);
      body.set("photo", new Blob([picture]), "photo");
      const response = await fetch(`${server.url}/verdicts/photos`, { method: "POST", body });
      return response.ok ? [id] : [];
    },
  };
}

test("the power fails again and again while two phones send: each acknowledged entry is there once", async () => {
  const random = randomFrom("power cuts");
  const items = rows<{ id: string }>(
    `SELECT i."id" FROM "LunchItem" i JOIN "Lunch" l ON l."id" = i."lunchId"
     WHERE l."date" = '2026-03-11' AND i."fate" <> 'scrapped' ORDER BY i."id"`,
  ).map(({ id }) => id);
  const [lunch] = rows<{ id: string }>(`SELECT "id" FROM "Lunch" WHERE "date" = '2026-03-11'`);
  const lunchId = lunch?.id ?? "";
  const picture = await sharp({ create: { width: 90, height: 60, channels: 3, background: "red" } })
    .jpeg()
    .toBuffer();
  const verdicts = [entriesOf("one", "biscuit", items), entriesOf("two", "pepper", items)];
  const phones: readonly (readonly Errand[])[] = ["one", "two"].map((device, index) => [
    inBatches("/verdicts/entries", verdicts[index] ?? []),
    inBatches("/verdicts/facts", factsOf(device, lunchId)),
    photosOf(lunchId, Buffer.from(picture)),
  ]);
  const acknowledged = new Set<string>();
  let requests = 0;
  let cuts = 0;
  let lost = 0;
  let rising: Promise<void> = Promise.resolve();
  const cutAt = new Set(Array.from({ length: CUTS }, (_, index) => 3 + index * 6));

  const phone = async (errands: readonly Errand[]): Promise<void> => {
    const left = errands.map(({ ids, send }) => ({ ids, send }));
    while (left.some(({ ids }) => ids.length > 0)) {
      // Kinds in turn, as they are tapped.
      for (const errand of left) {
        const batch = errand.ids.slice(0, 1 + random.below(6));
        if (batch.length === 0) continue;
        requests += 1;
        const answer = errand.send(batch).catch(() => undefined);
        if (cutAt.delete(requests)) {
          cuts += 1;
          // Cut with the request on its way, then the kitchen computer starts again.
          rising = rising.then(() => server.crash()).then(() => server.restart());
        }
        const kept = await answer;
        if (kept) for (const id of kept) acknowledged.add(id);
        else lost += 1;
        await rising;
        errand.ids = errand.ids.filter((id) => !acknowledged.has(id));
      }
    }
  };
  await Promise.all(phones.map(phone));
  expect(cuts).toBe(CUTS);
  expect(lost).toBeGreaterThan(0);
  expect(acknowledged.size).toBe(ENTRIES + FACTS + PHOTOS);

  // Sent once more, all of it, backwards: nothing may change.
  const standing = `SELECT "itemId", "childId", "eaten", "revision" FROM "Reaction"
    WHERE "itemId" IN (SELECT "id" FROM "LunchItem" WHERE "lunchId" =
      (SELECT "id" FROM "Lunch" WHERE "date" = '2026-03-11')) ORDER BY 1, 2`;
  const before = rows(standing);
  const factsBefore = rows(FACTS_STANDING);
  for (const { ids, send } of phones.flat())
    for (let at = ids.length; at > 0; at -= 50) await send(ids.slice(Math.max(0, at - 50), at));
  expect(rows(standing)).toEqual(before);
  expect(rows(FACTS_STANDING)).toEqual(factsBefore);

  const kept = rows<{ id: string; count: number }>(
    `SELECT "id", count(*) AS count FROM (
       SELECT "id" FROM "ReactionEvent" WHERE "device" IN ('one', 'two')
       UNION ALL SELECT "id" FROM "DayFactEvent" WHERE "device" IN ('one', 'two')
       UNION ALL SELECT "id" FROM "Photo") GROUP BY 1`,
  );
  expect(new Set(kept.map(({ id }) => id))).toEqual(acknowledged);
  expect(kept.every(({ count }) => count === 1)).toBe(true);
  expect(readdirSync(path.join(folder, "photos"))).toHaveLength(2 * PHOTOS);
  const last = new Map(verdicts.flat().map((entry) => [`${entry.itemId} ${entry.childId}`, entry]));
  for (const [, { itemId, childId, change }] of last)
    expect(before).toContainEqual(
      expect.objectContaining({ itemId, childId, eaten: change.eaten }),
    );
});
