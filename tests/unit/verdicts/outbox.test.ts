import "fake-indexeddb/auto";
import { afterEach, expect, test, vi } from "vitest";
import type { Cell } from "#app/verdicts/entry-answer.ts";
import { newId, openOutbox, type Entry } from "#app/verdicts/outbox.client.ts";
import { sendWaiting } from "#app/verdicts/send.client.ts";

afterEach(() => {
  vi.unstubAllGlobals();
});

function entry(second: number, device: string): Entry {
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

/** A server that is reached or not, and answers what it is told to. */
function line(answer: (entries: readonly Entry[]) => Response) {
  vi.stubGlobal("fetch", (_: string, { body }: { body: string }) =>
    Promise.resolve(answer((JSON.parse(body) as { entries: Entry[] }).entries)),
  );
}

test("what was tapped outlives the page, in order, and leaves only when it is acknowledged", async () => {
  const first = await openOutbox();
  expect(first.isLasting).toBe(true);
  const entries = [3, 1, 2].map((second) => entry(second, first.device));
  await first.add(entries);

  const second = await openOutbox();
  expect(second.device).toBe(first.device);
  const waiting = await second.waiting();
  expect(waiting.map(({ entry: { change } }) => change.eaten)).toEqual([1, 2, 3]);

  vi.stubGlobal("fetch", () => Promise.reject(new TypeError("no line")));
  expect(await sendWaiting(second, () => undefined)).toBe("unreachable");
  expect(await second.waiting()).toHaveLength(3);
  line(() => new Response("", { status: 500 }));
  expect(await sendWaiting(second, () => undefined)).toBe("unreachable");
  line(() => new Response("", { status: 401 }));
  expect(await sendWaiting(second, () => undefined)).toBe("locked");
  expect(await second.waiting()).toHaveLength(3);

  line((sent) =>
    Response.json({
      answers: sent.map((_, index) =>
        index === 1
          ? { kind: "refused", message: "This item was scrapped." }
          : { kind: "kept", cell: cell(index + 1) },
      ),
    }),
  );
  expect(await sendWaiting(second, () => undefined)).toBe("sent");
  const left = await (await openOutbox()).waiting();
  expect(left.map(({ problem }) => problem)).toEqual(["This item was scrapped."]);
  expect(await second.cells()).toMatchObject([{ itemId: "cucumber", revision: 3 }]);
});

test("what the server said last of a verdict is not overwritten by an older answer", async () => {
  const outbox = await openOutbox();
  await outbox.settle([], [cell(9)]);
  await outbox.settle([], [cell(4)]);
  expect(await outbox.cells()).toMatchObject([{ revision: 9 }]);
});

test("ids are random UUIDs of version 4 (RFC 9562, section 5.4)", () => {
  const ids = Array.from({ length: 200 }, newId);
  for (const id of ids)
    expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  expect(new Set(ids).size).toBe(200);
});
