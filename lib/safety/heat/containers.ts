import { ok, refuse, type Result } from "#lib/base/index.ts";
import { WATER_KJ } from "./specific-heat.ts";

/** kJ/K of a jar's inner wall: about 200 g of steel at 0.5 kJ/(kg K), from memory. */
export const JAR_KJ_PER_K = 0.1;

/** JIS S 2006: filled at 95 °C (from memory), standing at 20 °C, read after 6 hours. */
const TEST = { startC: 95, roomC: 20, hours: 6 } as const;

/**
 * Least temperature after 6 hours of a stainless lunch container, direct-fill type, by capacity (JIS S
 * 2006, read): a container that just meets the standard is the worst that may bear its mark.
 */
export const JAR_MINIMA: readonly { readonly underMl: number; readonly leastC: number }[] = [
  { underMl: 400, leastC: 48 },
  { underMl: 600, leastC: 54 },
  { underMl: 900, leastC: 62 },
];

/** k per hour of a container full of water that just meets the standard; the largest class above 900 mL. */
export function standardPerHour(capacityMl: number): number {
  const held = JAR_MINIMA.find(({ underMl }) => capacityMl < underMl) ?? JAR_MINIMA.at(-1);
  const leastC = held?.leastC ?? TEST.roomC;
  return -Math.log((leastC - TEST.roomC) / (TEST.startC - TEST.roomC)) / TEST.hours;
}

/** Heat a jar passes, kJ/(h K): its constant times what it held in the test. */
export function jarConductance(capacityMl: number, perHour: number): number {
  return perHour * ((capacityMl / 1000) * WATER_KJ + JAR_KJ_PER_K);
}

/** Ways to carry a lunch. */
export const BAG_KINDS = ["paper", "soft", "hard"] as const;
export type BagKind = (typeof BAG_KINDS)[number];

/** Outer area, m², and the still air on both sides, m² K/W: from memory. */
const BAG_AREA = 0.18;
const AIR_FILMS = 0.25;
/** Foam in m and its conductivity in W/(m K), from memory: none; 6 mm of soft foam; 15 mm of hard foam. */
const FOAM: Readonly<Record<BagKind, { readonly metres: number; readonly wPerMK: number }>> = {
  paper: { metres: 0, wPerMK: 0.035 },
  soft: { metres: 0.006, wPerMK: 0.035 },
  hard: { metres: 0.015, wPerMK: 0.03 },
};
/** kJ/h in a watt. */
const KJ_PER_WATT_HOUR = 3.6;

/** Heat a bag or box passes, kJ/(h K), worked out from its walls. */
export function bagConductance(kind: BagKind): number {
  const { metres, wPerMK } = FOAM[kind];
  return (BAG_AREA / (metres / wPerMK + AIR_FILMS)) * KJ_PER_WATT_HOUR;
}

/** One thermometer reading: water in the container, read again after some hours. */
export type Reading = {
  readonly waterMl: number;
  readonly startC: number;
  readonly hours: number;
  readonly readC: number;
  readonly roomC: number;
};

export type ReadingProblem = { readonly kind: "not-between" | "no-time" };

/**
 * The container's own constant, k per hour, from one reading. Refuses a reading that does not lie
 * between start and room, which no cooling can give, and one without time or water.
 */
export function perHourOf({
  waterMl,
  startC,
  hours,
  readC,
  roomC,
}: Reading): Result<number, ReadingProblem> {
  if (hours <= 0 || waterMl <= 0) return refuse({ kind: "no-time" });
  const share = (readC - roomC) / (startC - roomC);
  if (!(share > 0 && share < 1)) return refuse({ kind: "not-between" });
  return ok(-Math.log(share) / hours);
}

/** Words for a refused reading. */
export function describeReadingProblem({ kind }: ReadingProblem): string {
  switch (kind) {
    case "not-between":
      return "The reading must lie between the start and the room’s temperature.";
    case "no-time":
      return "Write how many hours passed and how much water was in it.";
  }
}
