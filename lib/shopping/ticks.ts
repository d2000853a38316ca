/** What has become of a line of a run. "dropped" stays as a mark, so that a late tick can't revive it. */
export type LineState = "open" | "bought" | "none-left" | "dropped";

/** One line as one of two people left it. */
export type Tick = {
  readonly lineId: string;
  readonly state: LineState;
  readonly packs: number;
  readonly paidCents: number | null;
  /** Logical time of the change and the device that made it; greater is later. See `nextStamp`. */
  readonly stamp: string;
};

/** Ticks by line; what one device knows. */
export type Ticks = ReadonlyMap<string, Tick>;

const STAMP_DIGITS = 12;

/**
 * A stamp later than every one the device has seen: a Lamport clock (Lamport 1978, CACM 21:558–565)
 * followed by the device's name, which decides between two changes made unseen of each other.
 */
export function nextStamp(ticks: Ticks, device: string): string {
  let latest = 0;
  for (const { stamp } of ticks.values()) {
    latest = Math.max(latest, Number.parseInt(stamp, 10) || 0);
  }
  return `${String(latest + 1).padStart(STAMP_DIGITS, "0")}:${device}`;
}

/** The ticks with one line changed on a device. */
export function tickLine(ticks: Ticks, change: Omit<Tick, "stamp">, device: string): Ticks {
  return new Map(ticks).set(change.lineId, { ...change, stamp: nextStamp(ticks, device) });
}

/**
 * What two devices know together: per line, the later change (a last-writer-wins map; Shapiro et al.
 * 2011, INRIA RR-7506, §3.2.1). The order, grouping and repetition of merges make no difference.
 */
export function mergeTicks(one: Ticks, other: Ticks): Ticks {
  const merged = new Map(one);
  for (const [lineId, tick] of other) {
    const known = merged.get(lineId);
    if (!known || isLater(tick, known)) merged.set(lineId, tick);
  }
  return new Map([...merged].sort(([left], [right]) => (left < right ? -1 : left > right ? 1 : 0)));
}

/** Equal stamps with unequal contents should not occur; a fixed order keeps both sides agreed. */
function isLater(one: Tick, other: Tick): boolean {
  const [left, right] = [sortKey(one), sortKey(other)];
  return left > right;
}

function sortKey({ stamp, state, packs, paidCents }: Tick): string {
  return [stamp, state, packs, paidCents ?? ""].join("\n");
}
