import "fake-indexeddb/auto";
import { afterEach, expect, test, vi } from "vitest";
import type { Cell, DayState } from "#app/verdicts/entry-answer.ts";
import type { VerdictEntry } from "#app/verdicts/entries.ts";
import { oneAtATime } from "#app/verdicts/one-at-a-time.ts";
import { newId, openOutbox } from "#app/verdicts/outbox.client.ts";
import { sendEntries, sendPhotos } from "#app/verdicts/send.client.ts";
import { NO_FACTS } from "#lib/reactions/index.ts";

afterEach(() => {
  vi.unstubAllGlobals();
});

function entry(second: number, device: string): VerdictEntry {
  return {
    ...{ id: newId(), itemId: "cucumber", childId: "biscuit", device, baseRevision: 0 },
    madeAt: new Date(Date.UTC(2026, 2, 11, 15, 0, second)).toISOString(),
    change: { eaten: second % 5 },
  };
}

function cell(revision: number): Cell {
  return {
    ...{ itemId: "cucumber", childId: "biscuit", revision, conflicts: [] },
    values: { eaten: 2, face: null, quote: "", note: "" },
  };
}

function day(revision: number): DayState {
  return { lunchId: "wednesday", revision, conflicts: [], values: NO_FACTS };
}

/** Listens to nothing that is said. */
const DEAF = { cells: () => undefined, days: () => undefined, photo: () => undefined };

/** A server that is reached or not, and answers what it is told to. */
function line(answer: (entries: readonly VerdictEntry[]) => Response) {
  vi.stubGlobal("fetch", (_: string, { body }: { body: string }) =>
    Promise.resolve(answer((JSON.parse(body) as { entries: VerdictEntry[] }).entries)),
  );
}

test("what was tapped outlives the page, in order, and leaves only when it is acknowledged", async () => {
  const first = await openOutbox();
  const entries = [3, 1, 2].map((second) => entry(second, first.device));
  await first.shelves.verdicts.add(entries);

  const second = await openOutbox();
  expect(second.device).toBe(first.device);
  const waiting = await second.shelves.verdicts.waiting();
  expect(waiting.map(({ entry: { change } }) => change.eaten)).toEqual([1, 2, 3]);

  vi.stubGlobal("fetch", () => Promise.reject(new TypeError("no line")));
  expect(await sendEntries(second, DEAF)).toBe("unreachable");
  expect(await second.shelves.verdicts.waiting()).toHaveLength(3);
  line(() => new Response("", { status: 500 }));
  expect(await sendEntries(second, DEAF)).toBe("unreachable");
  line(() => new Response("", { status: 401 }));
  expect(await sendEntries(second, DEAF)).toBe("locked");
  expect(await second.shelves.verdicts.waiting()).toHaveLength(3);

  line((sent) =>
    Response.json({
      answers: sent.map((_, index) =>
        index === 1
          ? { kind: "refused", message: "This item was scrapped." }
          : { kind: "kept", state: cell(index + 1) },
      ),
    }),
  );
  expect(await sendEntries(second, DEAF)).toBe("sent");
  const left = await (await openOutbox()).shelves.verdicts.waiting();
  expect(left.map(({ problem }) => problem)).toEqual(["This item was scrapped."]);
  expect((await second.remembered()).cells).toMatchObject([{ itemId: "cucumber", revision: 3 }]);
});

test("what the server said last of a verdict is not overwritten by an older answer", async () => {
  const outbox = await openOutbox();
  for (const revision of [9, 4])
    await outbox.remember({ cells: [cell(revision)], days: [day(revision)] });
  expect(await outbox.remembered()).toMatchObject({
    cells: [{ revision: 9 }],
    days: [{ revision: 9 }],
  });
});

test("a fact of the day waits beside the verdicts, and a photo with its file", async () => {
  const outbox = await openOutbox();
  const made = { madeAt: "2026-03-11T15:00:00.000Z", lunchId: "wednesday" };
  const fact = { ...made, id: newId(), device: outbox.device, baseRevision: 0 };
  await outbox.shelves.facts.add([{ ...fact, change: { minutes: 20 } }]);
  const file = new Blob(["a picture"], { type: "image/jpeg" });
  const photos = [1, 2, 3].map((second) => ({
    ...{ id: newId(), lunchId: "wednesday", keepOriginal: false, file },
    madeAt: `2026-03-11T15:00:0${second}.000Z`,
  }));
  await outbox.shelves.photos.add(photos);

  const sent: string[] = [];
  vi.stubGlobal("fetch", (address: string, { body }: { body: FormData | string }) => {
    if (typeof body === "string") {
      sent.push(address);
      return Promise.resolve(Response.json({ answers: [{ kind: "kept", state: day(1) }] }));
    }
    const given = body.get("id");
    const id = typeof given === "string" ? given : "";
    sent.push(id);
    if (id === photos[0]?.id) return Promise.resolve(Response.json({ photo: null }));
    if (id === photos[1]?.id)
      return Promise.resolve(Response.json({ message: "No picture." }, { status: 422 }));
    return Promise.resolve(new Response("", { status: 503 }));
  });
  expect(await sendEntries(outbox, DEAF)).toBe("sent");
  expect(await outbox.shelves.facts.waiting()).toEqual([]);
  expect(await sendPhotos(outbox, DEAF)).toBe("unreachable");
  expect(sent[0]).toBe("/verdicts/facts");
  const left = await (await openOutbox()).shelves.photos.waiting();
  const told = left.map(({ entry: { id }, problem }) => [id, problem]);
  expect(told).toHaveLength(2);
  expect(told).toContainEqual([photos[1]?.id, "No picture."]);
  expect(told).toContainEqual([photos[2]?.id, undefined]);
});

test("work asked for during a turn gets one more turn, and never two at once", async () => {
  let [turns, running, most] = [0, 0, 0];
  const gates: (() => void)[] = [];
  const work = oneAtATime(async () => {
    most = Math.max(most, (running += 1));
    turns += 1;
    await new Promise<void>((open) => gates.push(open));
    running -= 1;
  });
  const first = work();
  const meanwhile = [work(), work()];
  gates.shift()?.();
  await vi.waitUntil(() => gates.length > 0);
  gates.shift()?.();
  await Promise.all([first, ...meanwhile]);
  expect([turns, most]).toEqual([2, 1]);
  const later = work();
  gates.shift()?.();
  await later;
  expect(turns).toBe(3);
});

test("ids are random UUIDs of version 4 (RFC 9562, section 5.4)", () => {
  const ids = Array.from({ length: 200 }, newId);
  for (const id of ids)
    expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  expect(new Set(ids).size).toBe(200);
});
