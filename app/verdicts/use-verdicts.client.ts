"use client";

import { useState } from "react";
import type { VerdictConflict, VerdictFields } from "#lib/reactions/index.ts";
import { cellKey, NOTHING_SAID } from "./entry-answer.ts";
import type { Phone } from "./use-phone.client.ts";

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

/** The verdicts of a day on this phone: what stands, and how to say more. */
export function useVerdicts({ cells, waiting, keep }: Phone) {
  const [undoable, setUndoable] = useState<readonly (readonly Change[])[]>([]);

  const shown = (itemId: string, childId: string): Shown => {
    const cell = cells.get(cellKey({ itemId, childId }));
    const own = waiting.verdicts.filter(
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

  const say = (changes: readonly Change[]): void =>
    void keep("verdicts", (stamp) =>
      changes.map((one) => ({
        ...one,
        ...stamp(),
        baseRevision: cells.get(cellKey(one))?.revision ?? 0,
      })),
    );

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
    say(changes);
  };

  const undo = (): void => {
    const last = undoable.at(-1);
    if (!last) return;
    setUndoable((stack) => stack.slice(0, -1));
    say(last);
  };

  return { shown, log, undo, canUndo: undoable.length > 0 };
}
