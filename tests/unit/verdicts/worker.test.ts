import { readFileSync } from "node:fs";
import path from "node:path";
import { runInNewContext } from "node:vm";
import { expect, test } from "vitest";

const ORIGIN = "https://192.168.1.20:4310";
const DAY = `${ORIGIN}/verdicts/2026-03-11`;
const SOURCE = path.resolve(import.meta.dirname, "../../../app/verdicts-worker.js/worker.mjs");

type Answer = Pick<Response, "status" | "type" | "redirected" | "url"> & {
  readonly ok: boolean;
  readonly clone: () => Answer;
};
type Listener = (event: object) => void;

/** What a browser's network gives back, as far as the worker looks at it (Fetch standard, §2.2.6). */
function answer(change: Partial<Answer> = {}): Answer {
  const made: Answer = {
    ...{ status: 200, type: "basic", redirected: false, url: DAY, ...change },
    ok: (change.status ?? 200) === 200,
    clone: () => made,
  };
  return made;
}

const PAGE = answer();
const REFUSED = answer({ status: 401 });
const SENT_ON = answer({ status: 0, type: "opaqueredirect" });
const DOOR = answer({ redirected: true, url: `${ORIGIN}/let-in` });
const OTHER_DAY = answer({ redirected: true, url: DAY });

/** The worker with caches and a network of the test's own; `answers` are given in their order. */
function startWorker(answers: readonly (Answer | "cut")[]) {
  const stores = new Map<string, Map<string, unknown>>();
  const open = (name: string) => {
    const store = stores.get(name) ?? new Map<string, unknown>();
    stores.set(name, store);
    return Promise.resolve({
      match: (key: string) => Promise.resolve(store.get(key)),
      put: (key: string, value: unknown) => Promise.resolve(store.set(key, value)),
      delete: (key: string) => Promise.resolve(store.delete(key)),
      keys: () => Promise.resolve([...store.keys()].map((key) => ({ url: ORIGIN + key }))),
    });
  };
  const listeners = new Map<string, Listener>();
  const left = [...answers];
  runInNewContext(readFileSync(SOURCE, "utf8"), {
    self: {
      addEventListener: (name: string, listener: Listener) => listeners.set(name, listener),
      location: { origin: ORIGIN },
    },
    caches: { open, delete: (name: string) => Promise.resolve(stores.delete(name)) },
    fetch: () => {
      const next = left.shift() ?? "cut";
      return next === "cut"
        ? Promise.reject(new TypeError("Failed to fetch"))
        : Promise.resolve(next);
    },
    ...{ URL, setTimeout },
    Response: { redirect: (url: string) => `to ${url}` },
  });
  const send = async (name: string, event: object): Promise<unknown> => {
    const waits: unknown[] = [];
    let given: unknown;
    listeners.get(name)?.({
      ...event,
      waitUntil: (wait: unknown) => waits.push(wait),
      respondWith: (response: unknown) => (given = response),
    });
    const response = await given;
    await Promise.all(waits);
    return response;
  };
  return {
    visit: (url = DAY) => send("fetch", { request: { method: "GET", mode: "navigate", url } }),
    tell: (data: object) => send("message", { data, source: null }),
    kept: () => [...(stores.get("verdict-pages")?.keys() ?? [])],
  };
}

test("a page that was opened opens again without a connection", async () => {
  const worker = startWorker([PAGE, "cut"]);
  await worker.visit();
  expect(worker.kept()).toEqual(["/verdicts/2026-03-11"]);
  expect(await worker.visit()).toBe(PAGE);
});

test("told to forget, it keeps no page", async () => {
  const worker = startWorker([PAGE]);
  await worker.visit();
  await worker.tell({ kind: "something else" });
  expect(worker.kept()).toHaveLength(1);
  await worker.tell({ kind: "forget" });
  expect(worker.kept()).toEqual([]);
});

test.each([
  ["a refusal", [REFUSED], REFUSED],
  ["a redirect that leads to the door", [SENT_ON, DOOR], SENT_ON],
  ["a redirect whose target refuses", [SENT_ON, REFUSED], SENT_ON],
  ["the door at the end of a followed redirect", [DOOR], DOOR],
])("%s empties what was kept, and is handed on", async (_, answers, handed) => {
  const worker = startWorker([PAGE, ...answers]);
  await worker.visit();
  expect(await worker.visit()).toBe(handed);
  expect(worker.kept()).toEqual([]);
});

test.each([
  ["a redirect to another day", [SENT_ON, OTHER_DAY]],
  ["a redirect that cannot be followed", [SENT_ON, "cut" as const]],
  ["a page that is not there", [answer({ status: 404 })]],
  ["a fault of the server", [answer({ status: 500 })]],
])("%s leaves what was kept", async (_, answers) => {
  const worker = startWorker([PAGE, ...answers]);
  await worker.visit();
  await worker.visit(`${ORIGIN}/verdicts`);
  expect(worker.kept()).toEqual(["/verdicts/2026-03-11"]);
});

test("a page asked for by the page itself is not kept when the door answers", async () => {
  const worker = startWorker([PAGE, DOOR]);
  await worker.visit();
  await worker.tell({ kind: "keep", page: DAY, files: [] });
  expect(worker.kept()).toEqual([]);
});
