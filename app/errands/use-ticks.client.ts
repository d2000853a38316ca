"use client";

import { useRouter } from "next/navigation";
import { useCallback, useEffect, useMemo, useState, useSyncExternalStore } from "react";
import type { Day } from "#lib/calendar/index.ts";
import { mergeTicks, nextStamp, type Tick, type Ticks } from "#lib/shopping/index.ts";
import type { LineView, RunView } from "#lib/use-cases/errands/run-view.ts";
import { tickLinesAction } from "./actions.ts";
import {
  deviceName,
  keepWaiting,
  nothingWaits,
  takeDelivered,
  waitingTicks,
  watchOutbox,
  type WaitingTick,
} from "./outbox.client.ts";

const RETRY_MS = 8_000;
const LOOK_AGAIN_MS = 30_000;

/** A change of a line: what it leaves out stays. */
export type TickChange = Partial<Pick<Tick, "state" | "packs" | "paidCents">>;

export type TickDesk = {
  readonly tickOf: (line: LineView) => Tick;
  readonly tick: (run: RunView, line: LineView, change: TickChange) => void;
  /** Ticks of this week that have not reached Noonbook. */
  readonly waiting: number;
  readonly problem: string | undefined;
};

let isSending = false;

/**
 * The ticks of a week as this device knows them: what the server said, then what waits here. A tick
 * counts at once, is kept over a reload, and is sent as soon as Noonbook can be reached.
 */
export function useTicks(monday: Day, runs: readonly RunView[]): TickDesk {
  const router = useRouter();
  const all = useSyncExternalStore(watchOutbox, waitingTicks, nothingWaits);
  const [told, setTold] = useState<Ticks>(() => new Map());
  const [problem, setProblem] = useState<string>();
  const waiting = useMemo(() => all.filter((tick) => tick.monday === monday), [all, monday]);
  const ticks = useMemo(
    () => mergeTicks(mergeTicks(ticksOf(runs), told), byLine(waiting)),
    [runs, told, waiting],
  );

  const send = useCallback(async (): Promise<void> => {
    const batch = waitingTicks().filter((tick) => tick.monday === monday);
    if (isSending || batch.length === 0 || !navigator.onLine) return;
    isSending = true;
    try {
      const answer = await tickLinesAction({ monday, ticks: batch });
      if (answer.kind === "ticked") {
        setTold((before) => mergeTicks(before, byLine(answer.ticks)));
        const isGone = answer.goneIds.length > 0;
        setProblem(isGone ? "A line is no longer on the list; its tick was let go." : undefined);
      } else {
        const [first] = answer.kind === "invalid" ? Object.values(answer.fields) : [answer.message];
        setProblem(first);
      }
      takeDelivered(batch);
    } catch {
      setProblem(undefined);
    } finally {
      isSending = false;
    }
  }, [monday]);

  useEffect(() => {
    const timer = setTimeout(() => void send(), 300);
    return () => {
      clearTimeout(timer);
    };
  }, [waiting, send]);
  useEffect(() => {
    const retry = setInterval(() => void send(), RETRY_MS);
    const again = (): void => void send();
    window.addEventListener("online", again);
    return () => {
      clearInterval(retry);
      window.removeEventListener("online", again);
    };
  }, [send]);
  useEffect(() => {
    // What the other shopper ticked.
    const look = (): void => {
      if (document.visibilityState === "visible" && navigator.onLine) router.refresh();
    };
    const timer = setInterval(look, LOOK_AGAIN_MS);
    return () => {
      clearInterval(timer);
    };
  }, [router]);

  return {
    tickOf: (line) => ticks.get(line.id) ?? tickOfLine(line),
    tick: (run, line, change) => {
      const before = ticks.get(line.id) ?? tickOfLine(line);
      const stamp = nextStamp(ticks, deviceName());
      keepWaiting({ ...before, ...change, stamp, monday, shopId: run.shopId, day: run.day });
    },
    waiting: waiting.length,
    problem,
  };
}

function ticksOf(runs: readonly RunView[]): Ticks {
  const lines = runs.flatMap((run) => run.aisles.flatMap((aisle) => aisle.lines));
  return byLine(lines.filter((line) => line.stamp !== "").map(tickOfLine));
}

function tickOfLine({ id, state, packs, paidCents, stamp }: LineView): Tick {
  return { lineId: id, state, packs, paidCents, stamp };
}

function byLine(ticks: readonly (Tick | WaitingTick)[]): Ticks {
  return new Map(
    ticks.map(({ lineId, state, packs, paidCents, stamp }) => [
      lineId,
      { lineId, state, packs, paidCents, stamp },
    ]),
  );
}
