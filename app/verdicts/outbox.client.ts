import type { DBSchema, IDBPDatabase } from "idb";
import type { VerdictFields } from "#lib/reactions/index.ts";
import { cellKey, type Cell } from "./entry-answer.ts";

/** One entry as it is sent; its id is made here, so that it counts once however often it goes. */
export type Entry = {
  readonly id: string;
  readonly itemId: string;
  readonly childId: string;
  readonly device: string;
  readonly baseRevision: number;
  readonly madeAt: string;
  readonly change: Partial<VerdictFields>;
};

/** An entry that is not kept by the server yet; with a problem, one that it will not keep. */
export type Waiting = { readonly entry: Entry; readonly problem?: string };

interface Schema extends DBSchema {
  waiting: { key: string; value: Waiting };
  /** What the server said last of each verdict: newer than a page that opened from the worker. */
  cells: { key: string; value: Cell & { readonly seenAt: number } };
  about: { key: string; value: string };
}

const NAME = "noonbook-verdicts";
const CELL_DAYS = 21;
const DAY_MS = 86_400_000;

/** The outbox of this browser: what was tapped and not yet acknowledged, in its own database. */
export type Outbox = {
  readonly device: string;
  /** False where the browser keeps nothing: then the page must stay open until all is sent. */
  readonly isLasting: boolean;
  /** In the order they were made. */
  readonly waiting: () => Promise<Waiting[]>;
  readonly cells: () => Promise<Cell[]>;
  readonly add: (entries: readonly Entry[]) => Promise<void>;
  /** Takes out what the server has kept, and remembers what it said of it. */
  readonly settle: (ids: readonly string[], cells: readonly Cell[]) => Promise<void>;
  readonly refuse: (entry: Entry, problem: string) => Promise<void>;
};

/** Opens the outbox; without a database of the browser's it lives as long as the page. */
export async function openOutbox(): Promise<Outbox> {
  try {
    // Asked for only here: the page stands before it.
    const { openDB } = await import("idb");
    const db = await openDB<Schema>(NAME, 1, {
      upgrade(fresh) {
        fresh.createObjectStore("waiting");
        fresh.createObjectStore("cells");
        fresh.createObjectStore("about");
      },
    });
    await forgetOldCells(db);
    return lastingOutbox(db, await deviceOf(db));
  } catch {
    return passingOutbox(newId());
  }
}

async function deviceOf(db: IDBPDatabase<Schema>): Promise<string> {
  const known = await db.get("about", "device");
  if (known !== undefined) return known;
  const device = newId();
  await db.put("about", device, "device");
  return device;
}

async function forgetOldCells(db: IDBPDatabase<Schema>): Promise<void> {
  const oldest = Date.now() - CELL_DAYS * DAY_MS;
  for (const cell of await db.getAll("cells"))
    if (cell.seenAt < oldest) await db.delete("cells", cellKey(cell.itemId, cell.childId));
}

function lastingOutbox(db: IDBPDatabase<Schema>, device: string): Outbox {
  return {
    device,
    isLasting: true,
    waiting: async () => (await db.getAll("waiting")).sort(earliestFirst),
    cells: () => db.getAll("cells"),
    add: async (entries) => {
      const change = db.transaction("waiting", "readwrite", { durability: "strict" });
      await Promise.all(entries.map((entry) => change.store.put({ entry }, entry.id)));
      await change.done;
    },
    settle: async (ids, cells) => {
      const change = db.transaction(["waiting", "cells"], "readwrite");
      const held = change.objectStore("cells");
      for (const cell of cells) {
        const key = cellKey(cell.itemId, cell.childId);
        const before = await held.get(key);
        if (!before || before.revision <= cell.revision)
          await held.put({ ...cell, seenAt: Date.now() }, key);
      }
      await Promise.all(ids.map((id) => change.objectStore("waiting").delete(id)));
      await change.done;
    },
    refuse: async (entry, problem) => {
      await db.put("waiting", { entry, problem }, entry.id);
    },
  };
}

function passingOutbox(device: string): Outbox {
  const held = new Map<string, Waiting>();
  return {
    device,
    isLasting: false,
    waiting: () => Promise.resolve([...held.values()].sort(earliestFirst)),
    cells: () => Promise.resolve([]),
    add: (entries) => {
      for (const entry of entries) held.set(entry.id, { entry });
      return Promise.resolve();
    },
    settle: (ids) => {
      for (const id of ids) held.delete(id);
      return Promise.resolve();
    },
    refuse: (entry, problem) => {
      held.set(entry.id, { entry, problem });
      return Promise.resolve();
    },
  };
}

function earliestFirst({ entry: one }: Waiting, { entry: other }: Waiting): number {
  return one.madeAt < other.madeAt ? -1 : 1;
}

/** A random UUID (RFC 9562, version 4), also where the page came without encryption and `randomUUID` is missing. */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  const hex = [...bytes].map((byte, index) => {
    const value = index === 6 ? (byte & 0x0f) | 0x40 : index === 8 ? (byte & 0x3f) | 0x80 : byte;
    return value.toString(16).padStart(2, "0");
  });
  return hex.join("").replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, "$1-$2-$3-$4-$5");
}
