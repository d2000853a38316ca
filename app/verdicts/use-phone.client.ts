"use client";

import { useCallback, useEffect, useRef, useState } from "react";
import type { PhotoView } from "#lib/use-cases/photos/photos.ts";
import { NONE_WAITING, type AllWaiting, type Entries, type Kind, type Waiting } from "./entries.ts";
import { cellKey, type Cell, type DayState } from "./entry-answer.ts";
import { oneAtATime } from "./one-at-a-time.ts";
import { newId, openOutbox, type Outbox } from "./outbox.client.ts";
import { askForDay, sendEntries, sendPhotos, type Hear, type Sending } from "./send.client.ts";
import { noteWaiting } from "./waiting-flag.client.tsx";

/** What the server said last of a day. */
export type Given = {
  readonly date: string;
  readonly cells: readonly Cell[];
  readonly day: DayState;
};

/** Everything an entry gets on this phone. */
export type Stamp = { readonly id: string; readonly madeAt: string; readonly device: string };

const RETRY_MS = 15_000;

/** A day on this phone: what the server said of it, what waits to be sent, and how to say more. */
export type Phone = ReturnType<typeof usePhone>;

/** Keeps what is tapped in this phone's outbox, and sends it whenever the server can be reached. */
export function usePhone(given: Given) {
  const { date } = given;
  const [cells, setCells] = useState(() => newestCells(new Map(), given.cells));
  const [day, setDay] = useState(given.day);
  const [photos, setPhotos] = useState<readonly PhotoView[]>([]);
  const [waiting, setWaiting] = useState(NONE_WAITING);
  const [lines, setLines] = useState<Lines>({ entries: "sent", photos: "sent" });
  const outbox = useRef<Promise<Outbox>>(undefined);
  /** Tapped, and on the way into the browser's database. */
  const adding = useRef(new Set<string>());
  const lastMade = useRef(0);
  const send = useRef<() => Promise<void>>(undefined);

  const show = useCallback(async (): Promise<void> => {
    const { shelves } = await (outbox.current ??= openOutbox());
    const stored: AllWaiting = {
      verdicts: await shelves.verdicts.waiting(),
      facts: await shelves.facts.waiting(),
      photos: await shelves.photos.waiting(),
    };
    const count = Object.values(stored).reduce((sum, { length }) => sum + length, 0);
    noteWaiting({ count, day: date });
    setWaiting((held) => ({
      verdicts: merge(stored.verdicts, held.verdicts, adding.current),
      facts: merge(stored.facts, held.facts, adding.current),
      photos: merge(stored.photos, held.photos, adding.current),
    }));
  }, [date]);

  useEffect(() => {
    const hear: Hear = {
      cells: (fresh) => {
        setCells((held) => newestCells(held, fresh));
      },
      days: (fresh) => {
        for (const one of fresh) setDay((held) => newestDay(held, one));
      },
      photo: (photo) => {
        setPhotos((held) => [...held, photo]);
      },
    };
    const line = openLine(
      () => (outbox.current ??= openOutbox()),
      hear,
      show,
      (change) => {
        setLines((held) => ({ ...held, ...change }));
      },
    );
    send.current = line;
    const look = async (): Promise<void> => {
      await line();
      const fresh = await askForDay(date);
      if (!fresh) return;
      hear.cells(fresh.cells);
      if (fresh.facts) hear.days([fresh.facts]);
    };
    const open = async (): Promise<void> => {
      const remembered = await (await (outbox.current ??= openOutbox())).remembered();
      hear.cells(remembered.cells);
      hear.days(remembered.days);
      await show();
      await line();
    };
    void open();
    const retry = setInterval(() => void line(), RETRY_MS);
    const onOnline = (): void => void look();
    const onShow = (): void => {
      if (document.visibilityState === "visible") void look();
    };
    window.addEventListener("online", onOnline);
    document.addEventListener("visibilitychange", onShow);
    return () => {
      clearInterval(retry);
      window.removeEventListener("online", onOnline);
      document.removeEventListener("visibilitychange", onShow);
    };
  }, [date, show]);

  const keep = async <Of extends Kind>(
    kind: Of,
    make: (stamp: () => Stamp) => readonly Entries[Of][],
  ): Promise<void> => {
    const { device, shelves } = await (outbox.current ??= openOutbox());
    const entries = make(() => {
      lastMade.current = Math.max(Date.now(), lastMade.current + 1);
      return { id: newId(), madeAt: new Date(lastMade.current).toISOString(), device };
    });
    for (const { id } of entries) adding.current.add(id);
    const fresh = entries.map((entry) => ({ entry }));
    setWaiting((held) => ({ ...held, [kind]: [...held[kind], ...fresh] }));
    await shelves[kind].add(entries);
    await show();
    for (const { id } of entries) adding.current.delete(id);
    await send.current?.();
  };

  const discard = async (kind: Kind, id: string): Promise<void> => {
    const { shelves } = await (outbox.current ??= openOutbox());
    await shelves[kind].remove([id]);
    await show();
  };

  const sending = (["busy", "locked", "unreachable"] as const).find(
    (state) => lines.entries === state || lines.photos === state,
  );
  return { cells, day, photos, waiting, sending, keep, discard, send: () => send.current?.() };
}

/** How each line stands. */
type Lines = Readonly<Record<"entries" | "photos", Sending | "busy">>;

/** One line for verdicts and facts, and one for photos, which take long and must not hold those up. */
function openLine(
  outbox: () => Promise<Outbox>,
  hear: Hear,
  show: () => Promise<void>,
  tell: (lines: Partial<Lines>) => void,
): () => Promise<void> {
  const entries = oneAtATime(async () => {
    tell({ entries: "busy" });
    const ended = await sendEntries(await outbox(), hear);
    await show();
    tell({ entries: ended });
  });
  const pictures = oneAtATime(async () => {
    tell({ photos: "busy" });
    const ended = await sendPhotos(await outbox(), hear);
    await show();
    tell({ photos: ended });
  });
  return async () => {
    await entries();
    void pictures();
  };
}

/** What the outbox holds, and of what is shown what is still on its way there. */
function merge<Entry extends { readonly id: string }>(
  stored: readonly Waiting<Entry>[],
  held: readonly Waiting<Entry>[],
  adding: ReadonlySet<string>,
): readonly Waiting<Entry>[] {
  const ids = new Set(stored.map(({ entry }) => entry.id));
  const before = new Map(held.map((one) => [one.entry.id, one]));
  return [
    // What was shown stays the same object, so that a photo is not drawn anew.
    ...stored.map((one) => {
      const known = before.get(one.entry.id);
      return known && known.problem === one.problem ? known : one;
    }),
    ...held.filter(({ entry: { id } }) => !ids.has(id) && adding.has(id)),
  ];
}

/** The cells of both, the one of the higher revision where both have it. */
function newestCells(
  held: ReadonlyMap<string, Cell>,
  fresh: readonly Cell[],
): ReadonlyMap<string, Cell> {
  const next = new Map(held);
  for (const cell of fresh) {
    const before = next.get(cellKey(cell));
    if (!before || before.revision <= cell.revision) next.set(cellKey(cell), cell);
  }
  return next;
}

function newestDay(held: DayState, fresh: DayState): DayState {
  return fresh.lunchId === held.lunchId && fresh.revision >= held.revision ? fresh : held;
}
