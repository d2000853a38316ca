import { randomUUID } from "node:crypto";
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import Database from "libsql";
import { afterAll, beforeAll, expect, test } from "vitest";
import { randomFrom } from "#lib/base/index.ts";
import { openBrowser, openPage } from "#tests/support/browser.ts";
import { startServer, type RunningServer } from "#tests/support/server.ts";

const ENTRIES = 200;
const CUTS = 7;
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
    madeAt: new Date(Date.UTC(2026, 2, 11, 15, 0, index)).toISOString(),
    change: { eaten: (index * 7) % 5 },
  }));
}

async function send(entries: readonly Entry[]): Promise<readonly string[]> {
  const response = await fetch(`${server.url}/verdicts/entries`, {
    method: "POST",
    body: JSON.stringify({ entries }),
  });
  const { answers } = (await response.json()) as { answers: readonly { kind: string }[] };
  return entries.filter((_, index) => answers[index]?.kind === "kept").map(({ id }) => id);
}

test("the power fails again and again while two phones send: each acknowledged entry is there once", async () => {
  const random = randomFrom("power cuts");
  const items = rows<{ id: string }>(
    `SELECT i."id" FROM "LunchItem" i JOIN "Lunch" l ON l."id" = i."lunchId"
     WHERE l."date" = '2026-03-11' AND i."fate" <> 'scrapped' ORDER BY i."id"`,
  ).map(({ id }) => id);
  const phones = [entriesOf("one", "biscuit", items), entriesOf("two", "pepper", items)];
  const acknowledged = new Set<string>();
  let requests = 0;
  let cuts = 0;
  let lost = 0;
  let rising: Promise<void> = Promise.resolve();
  const cutAt = new Set(Array.from({ length: CUTS }, (_, index) => 3 + index * 6));

  const phone = async (all: readonly Entry[]): Promise<void> => {
    let waiting = all;
    while (waiting.length > 0) {
      const batch = waiting.slice(0, 1 + random.below(6));
      requests += 1;
      const answer = send(batch).catch(() => undefined);
      if (cutAt.delete(requests)) {
        cuts += 1;
        // Cut with the request on its way, then the kitchen computer starts again.
        rising = rising.then(() => server.crash()).then(() => server.restart());
      }
      const kept = await answer;
      if (kept) for (const id of kept) acknowledged.add(id);
      else lost += 1;
      await rising;
      waiting = waiting.filter(({ id }) => !acknowledged.has(id));
    }
  };
  await Promise.all(phones.map(phone));
  expect(cuts).toBe(CUTS);
  expect(lost).toBeGreaterThan(0);
  expect(acknowledged.size).toBe(ENTRIES);

  // Sent once more, all of it, backwards: nothing may change.
  const standing = `SELECT "itemId", "childId", "eaten", "revision" FROM "Reaction"
    WHERE "itemId" IN (SELECT "id" FROM "LunchItem" WHERE "lunchId" =
      (SELECT "id" FROM "Lunch" WHERE "date" = '2026-03-11')) ORDER BY 1, 2`;
  const before = rows(standing);
  for (const all of phones)
    for (let at = all.length; at > 0; at -= 50) await send(all.slice(Math.max(0, at - 50), at));
  expect(rows(standing)).toEqual(before);

  const kept = rows<{ id: string; count: number }>(
    `SELECT "id", count(*) AS count FROM "ReactionEvent" WHERE "device" IN ('one', 'two') GROUP BY 1`,
  );
  expect(new Set(kept.map(({ id }) => id))).toEqual(acknowledged);
  expect(kept.every(({ count }) => count === 1)).toBe(true);
  const last = new Map(phones.flat().map((entry) => [`${entry.itemId} ${entry.childId}`, entry]));
  for (const [, { itemId, childId, change }] of last)
    expect(before).toContainEqual(
      expect.objectContaining({ itemId, childId, eaten: change.eaten }),
    );
});
