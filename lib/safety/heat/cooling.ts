/**
 * Newton's law of cooling for one well-mixed lump, T(t) = Ts + (T0 − Ts) e^(−kt): textbook, such as
 * Stewart, Calculus, exponential growth and decay. Hours, °C, and k per hour.
 */
export type Lump = { readonly startC: number; readonly roomC: number; readonly perHour: number };

/** Its temperature after some hours. */
export function temperatureAfter({ startC, roomC, perHour }: Lump, hours: number): number {
  return roomC + (startC - roomC) * Math.exp(-perHour * hours);
}

/** Hours until it passes a temperature on its way to the room's; Infinity when it never does, 0 when it has. */
export function hoursUntil({ startC, roomC, perHour }: Lump, lineC: number): number {
  if ((startC - lineC) * (startC - roomC) <= 0) return 0;
  if ((lineC - roomC) * (startC - roomC) <= 0 || perHour <= 0) return Infinity;
  return Math.log((startC - roomC) / (lineC - roomC)) / perHour;
}

/** Heat it gave off in some hours, kJ, for its heat capacity in kJ/K; negative when it took heat in. */
export function heatGivenOff(lump: Lump, kjPerK: number, hours: number): number {
  return kjPerK * (lump.startC - temperatureAfter(lump, hours));
}
