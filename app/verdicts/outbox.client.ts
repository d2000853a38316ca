import type { DBSchema, IDBPDatabase } from "idb";
import type {
  Entries,
  FactsEntry,
  Kind,
  Made,
  PhotoEntry,
  VerdictEntry,
  Waiting,
} from "./entries.ts";
import { cellKey, type Cell, type DayState } from "./entry-answer.ts";

type Seen = { readonly seenAt: number };

interface Schema extends DBSchema {
  waiting: { key: string; value: Waiting<VerdictEntry> };
  facts: { key: string; value: Waiting<FactsEntry> };
  photos: { key: string; value: Waiting<PhotoEntry> };
  /** What the server said last of each verdict: newer than a page that opened from the worker. */
  cells: { key: string; value: Cell & Seen };
  days: { key: string; value: DayState & Seen };
  about: { key: string; value: string };
}

const NAME = "noonbook-verdicts";
const VERSION = 2;
const REMEMBERED_DAYS = 21;
const DAY_MS = 86_400_000;

/** Entries of one kind: what was tapped and not yet acknowledged. */
export type Shelf<Entry> = {
  /** In the order they were made. */
  readonly waiting: () => Promise<readonly Waiting<Entry>[]>;
  readonly add: (entries: readonly Entry[]) => Promise<void>;
  /** Takes out what the server has kept, or the user let go. */
  readonly remove: (ids: readonly string[]) => Promise<void>;
  readonly refuse: (entry: Entry, problem: string) => Promise<void>;
};

/** The outbox of this browser, in its own database. */
export type Outbox = {
  readonly device: string;
  readonly shelves: { readonly [Of in Kind]: Shelf<Entries[Of]> };
  /** What the server said last, as far as it was told here. */
  readonly remembered: () => Promise<Said>;
  readonly remember: (said: Said) => Promise<void>;
};
type Said = { readonly cells: readonly Cell[]; readonly days: readonly DayState[] };

/** Opens the outbox; without a database of the browser's it lives as long as the page. */
export async function openOutbox(): Promise<Outbox> {
  try {
    // Asked for only here: the page stands before it.
    const { openDB } = await import("idb");
    const db = await openDB<Schema>(NAME, VERSION, {
      upgrade(fresh) {
        for (const store of ["waiting", "facts", "photos", "cells", "days", "about"] as const)
          if (!fresh.objectStoreNames.contains(store)) fresh.createObjectStore(store);
      },
      // A later version in another tab must not wait for this one.
      blocking: (_, __, event) => {
        if (event.target instanceof IDBDatabase) event.target.close();
      },
    });
    await forgetOld(db);
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

async function forgetOld(db: IDBPDatabase<Schema>): Promise<void> {
  const oldest = Date.now() - REMEMBERED_DAYS * DAY_MS;
  for (const cell of await db.getAll("cells"))
    if (cell.seenAt < oldest) await db.delete("cells", cellKey(cell));
  for (const { lunchId, seenAt } of await db.getAll("days"))
    if (seenAt < oldest) await db.delete("days", lunchId);
}

function lastingOutbox(db: IDBPDatabase<Schema>, device: string): Outbox {
  return {
    device,
    shelves: {
      verdicts: lastingShelf(
        () => db.getAll("waiting"),
        () => db.transaction("waiting", "readwrite", STRICT),
      ),
      facts: lastingShelf(
        () => db.getAll("facts"),
        () => db.transaction("facts", "readwrite", STRICT),
      ),
      photos: lastingShelf(
        () => db.getAll("photos"),
        () => db.transaction("photos", "readwrite", STRICT),
      ),
    },
    remembered: async () => ({ cells: await db.getAll("cells"), days: await db.getAll("days") }),
    remember: async ({ cells, days }) => {
      const change = db.transaction(["cells", "days"], "readwrite");
      const [heldCells, heldDays] = [change.objectStore("cells"), change.objectStore("days")];
      const seenAt = Date.now();
      for (const cell of cells) {
        const before = await heldCells.get(cellKey(cell));
        if (!before || before.revision <= cell.revision)
          await heldCells.put({ ...cell, seenAt }, cellKey(cell));
      }
      for (const day of days) {
        const before = await heldDays.get(day.lunchId);
        if (!before || before.revision <= day.revision)
          await heldDays.put({ ...day, seenAt }, day.lunchId);
      }
      await change.done;
    },
  };
}

/** Acknowledged only when it is on the disk: a phone may die the next moment. */
const STRICT = { durability: "strict" } as const;

/** A change of one store of the browser's database. */
type Change<Entry> = {
  readonly store: {
    readonly put: (value: Waiting<Entry>, key: string) => Promise<unknown>;
    readonly delete: (key: string) => Promise<void>;
  };
  readonly done: Promise<void>;
};

function lastingShelf<Entry extends Made>(
  all: () => Promise<Waiting<Entry>[]>,
  begin: () => Change<Entry>,
): Shelf<Entry> {
  /** What the browser's database has no room for is held by the page. */
  const overflow = passingShelf<Entry>();
  return {
    waiting: async () => [...(await all()), ...(await overflow.waiting())].sort(earliestFirst),
    add: async (entries) => {
      try {
        const { store, done } = begin();
        await Promise.all([...entries.map((entry) => store.put({ entry }, entry.id)), done]);
      } catch {
        await overflow.add(entries);
      }
    },
    remove: async (ids) => {
      const { store, done } = begin();
      await Promise.all([...ids.map((id) => store.delete(id)), done]);
      await overflow.remove(ids);
    },
    refuse: async (entry, problem) => {
      const { store, done } = begin();
      await Promise.all([store.put({ entry, problem }, entry.id), done]);
      await overflow.remove([entry.id]);
    },
  };
}

function passingOutbox(device: string): Outbox {
  return {
    device,
    shelves: { verdicts: passingShelf(), facts: passingShelf(), photos: passingShelf() },
    remembered: () => Promise.resolve({ cells: [], days: [] }),
    remember: () => Promise.resolve(),
  };
}

function passingShelf<Entry extends Made>(): Shelf<Entry> {
  const held = new Map<string, Waiting<Entry>>();
  return {
    waiting: () => Promise.resolve([...held.values()].sort(earliestFirst)),
    add: (entries) => {
      for (const entry of entries) held.set(entry.id, { entry, isPassing: true });
      return Promise.resolve();
    },
    remove: (ids) => {
      for (const id of ids) held.delete(id);
      return Promise.resolve();
    },
    refuse: (entry, problem) => {
      held.set(entry.id, { entry, problem, isPassing: true });
      return Promise.resolve();
    },
  };
}

function earliestFirst({ entry: one }: Waiting<Made>, { entry: other }: Waiting<Made>): number {
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
