"use client";

import { useCallback, useEffect, useRef, useState } from "react";
import type { VerdictConflict, VerdictFields } from "#lib/reactions/index.ts";
import { cellKey, NOTHING_SAID, type Cell } from "./entry-answer.ts";
import { newId, openOutbox, type Entry, type Outbox, type Waiting } from "./outbox.client.ts";
import { askForCells, sendWaiting, type Sending } from "./send.client.ts";

/** A change of one child's verdict on one item. */
export type Change = {
  readonly itemId: string;
  readonly childId: string;
  readonly change: Partial<VerdictFields>;
};

/** A verdict as this phone has it: the server's, with what waits laid over it. */
export type Shown = VerdictFields & {
  readonly conflicts: readonly VerdictConflict[];
  readonly isWaiting: boolean;
};

const RETRY_MS = 15_000;

/** The verdicts of a day on this phone: what stands, what waits, and how to say more. */
export function useVerdicts(date: string, given: readonly Cell[]) {
  const [cells, setCells] = useState(() => newest(new Map(), given));
  const [waiting, setWaiting] = useState<readonly Waiting[]>([]);
  const [sending, setSending] = useState<Sending | "busy">("sent");
  const [undoable, setUndoable] = useState<readonly (readonly Change[])[]>([]);
  const outbox = useRef<Promise<Outbox>>(undefined);
  const isSending = useRef(false);
  const isWanted = useRef(false);
  /** Tapped, and on the way into the browser's database. */
  const adding = useRef(new Set<string>());
  const lastMade = useRef(0);
  const take = useCallback((fresh: readonly Cell[]) => {
    setCells((held) => newest(held, fresh));
  }, []);

  const send = useCallback(async (): Promise<void> => {
    const box = await (outbox.current ??= openOutbox());
    isWanted.current = true;
    if (isSending.current) return;
    isSending.current = true;
    setSending("busy");
    let ended: Sending = "sent";
    // What was tapped meanwhile goes at once, not at the next turn.
    while (isWanted.current) {
      isWanted.current = false;
      ended = await sendWaiting(box, take);
    }
    isSending.current = false;
    const stored = await box.waiting();
    setWaiting((held) => merge(stored, held, adding.current));
    setSending(ended);
  }, [take]);

  useEffect(() => {
    const look = async (): Promise<void> => {
      await send();
      const fresh = await askForCells(date);
      if (fresh) take(fresh);
    };
    const onShow = (): void => {
      if (document.visibilityState === "visible") void look();
    };
    const open = async (): Promise<void> => {
      const box = await (outbox.current ??= openOutbox());
      take(await box.cells());
      const stored = await box.waiting();
      setWaiting((held) => merge(stored, held, adding.current));
      await send();
    };
    void open();
    const retry = setInterval(() => void send(), RETRY_MS);
    const onOnline = (): void => void look();
    window.addEventListener("online", onOnline);
    document.addEventListener("visibilitychange", onShow);
    return () => {
      clearInterval(retry);
      window.removeEventListener("online", onOnline);
      document.removeEventListener("visibilitychange", onShow);
    };
  }, [date, send, take]);

  const shown = (itemId: string, childId: string): Shown => {
    const cell = cells.get(cellKey(itemId, childId));
    const own = waiting.filter(
      ({ entry, problem }) =>
        entry.itemId === itemId && entry.childId === childId && problem === undefined,
    );
    const laid = own.reduce<VerdictFields>(
      (values, { entry }) => ({ ...values, ...entry.change }),
      cell?.values ?? NOTHING_SAID,
    );
    // What was chosen here settles it; the server will say so.
    const chosen = new Set(own.flatMap(({ entry }) => Object.keys(entry.change)));
    const conflicts = (cell?.conflicts ?? []).filter(({ field }) => !chosen.has(field));
    return { ...laid, conflicts, isWaiting: own.length > 0 };
  };

  const keep = async (changes: readonly Change[]): Promise<void> => {
    const box = await (outbox.current ??= openOutbox());
    const entries = changes.map(({ itemId, childId, change }): Entry => {
      lastMade.current = Math.max(Date.now(), lastMade.current + 1);
      return {
        id: newId(),
        ...{ itemId, childId, change, device: box.device },
        baseRevision: cells.get(cellKey(itemId, childId))?.revision ?? 0,
        madeAt: new Date(lastMade.current).toISOString(),
      };
    });
    for (const { id } of entries) adding.current.add(id);
    setWaiting((held) => [...held, ...entries.map((entry) => ({ entry }))]);
    await box.add(entries);
    for (const { id } of entries) adding.current.delete(id);
    await send();
  };

  const log = (changes: readonly Change[]): void => {
    if (changes.length === 0) return;
    const before = changes.map(({ itemId, childId, change }) => {
      const was = shown(itemId, childId);
      const fields = Object.keys(change) as (keyof VerdictFields)[];
      return {
        ...{ itemId, childId },
        change: Object.fromEntries(fields.map((field) => [field, was[field]])),
      };
    });
    setUndoable((stack) => [...stack, before]);
    void keep(changes);
  };

  const undo = (): void => {
    const last = undoable.at(-1);
    if (!last) return;
    setUndoable((stack) => stack.slice(0, -1));
    void keep(last);
  };

  const discard = async (id: string): Promise<void> => {
    const box = await (outbox.current ??= openOutbox());
    await box.settle([id], []);
    setWaiting((held) => held.filter(({ entry }) => entry.id !== id));
  };

  return { shown, log, undo, canUndo: undoable.length > 0, waiting, sending, send, discard };
}

/** What the outbox holds, and of what is shown what is still on its way there. */
function merge(
  stored: readonly Waiting[],
  held: readonly Waiting[],
  adding: ReadonlySet<string>,
): readonly Waiting[] {
  const ids = new Set(stored.map(({ entry }) => entry.id));
  return [...stored, ...held.filter(({ entry: { id } }) => !ids.has(id) && adding.has(id))];
}

/** The cells of both, the one of the higher revision where both have it. */
function newest(
  held: ReadonlyMap<string, Cell>,
  fresh: readonly Cell[],
): ReadonlyMap<string, Cell> {
  const next = new Map(held);
  for (const cell of fresh) {
    const key = cellKey(cell.itemId, cell.childId);
    const before = next.get(key);
    if (!before || before.revision <= cell.revision) next.set(key, cell);
  }
  return next;
}
