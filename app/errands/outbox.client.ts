import { z } from "zod";
import { Day } from "#lib/calendar/index.ts";
import type { Tick } from "#lib/shopping/index.ts";

/** A tick that has not reached Noonbook yet. */
export type WaitingTick = Tick & {
  readonly monday: Day;
  readonly shopId: string;
  readonly day: Day;
};

const Stored = z.array(
  z.object({
    monday: Day,
    shopId: z.string(),
    day: Day,
    lineId: z.string(),
    state: z.enum(["open", "bought", "none-left", "dropped"]),
    packs: z.number(),
    paidCents: z.number().nullable(),
    stamp: z.string(),
  }),
);

const BOX = "noonbook.errands.outbox";
const DEVICE = "noonbook.errands.device";
const NOTHING: readonly WaitingTick[] = [];

const listeners = new Set<() => void>();
let held: readonly WaitingTick[] | undefined;

/** The ticks that wait, kept over a reload; the same list until one is added or delivered. */
export function waitingTicks(): readonly WaitingTick[] {
  held ??= readBox();
  return held;
}

/** On the server nothing waits. */
export function nothingWaits(): readonly WaitingTick[] {
  return NOTHING;
}

/** Calls back when a tick is added or delivered, here or in another tab. */
export function watchOutbox(changed: () => void): () => void {
  const elsewhere = (event: StorageEvent): void => {
    if (event.key !== BOX) return;
    held = undefined;
    changed();
  };
  listeners.add(changed);
  window.addEventListener("storage", elsewhere);
  return () => {
    listeners.delete(changed);
    window.removeEventListener("storage", elsewhere);
  };
}

/** Puts a tick in; the later one of a line counts alone. */
export function keepWaiting(tick: WaitingTick): void {
  writeBox([...waitingTicks().filter((one) => one.lineId !== tick.lineId), tick]);
}

/** Takes out what was delivered, unless it was ticked again meanwhile. */
export function takeDelivered(delivered: readonly WaitingTick[]): void {
  const stamps = new Set(delivered.map(({ lineId, stamp }) => `${lineId} ${stamp}`));
  writeBox(waitingTicks().filter(({ lineId, stamp }) => !stamps.has(`${lineId} ${stamp}`)));
}

/** A name for this browser, so that two devices never make the same stamp. */
export function deviceName(): string {
  const known = fromStorage(DEVICE);
  if (known !== null && /^[\w-]{1,40}$/.test(known)) return known;
  const made = crypto.randomUUID().slice(0, 13);
  toStorage(DEVICE, made);
  return made;
}

function readBox(): readonly WaitingTick[] {
  try {
    const parsed = Stored.safeParse(JSON.parse(fromStorage(BOX) ?? "[]"));
    return parsed.success ? parsed.data : NOTHING;
  } catch {
    return NOTHING;
  }
}

function writeBox(ticks: readonly WaitingTick[]): void {
  held = ticks;
  toStorage(BOX, JSON.stringify(ticks));
  for (const changed of listeners) changed();
}

// A browser may keep nothing (private window): then ticks wait only as long as the page is open.
function fromStorage(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

function toStorage(key: string, value: string): void {
  try {
    localStorage.setItem(key, value);
  } catch {
    return;
  }
}
