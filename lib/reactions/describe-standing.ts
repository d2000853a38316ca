import { daysAgo, longDay, type Day } from "#lib/calendar/index.ts";
import type { Acceptance } from "./estimate.ts";
import { CARERS_STOP, TASTINGS_GUIDE } from "./standing.ts";

/** The reason for a standing in one or two calm sentences; `child` is the on-screen name. */
export function describeStanding(
  acceptance: Acceptance,
  names: { readonly child: string; readonly food: string },
  today: Day,
): string {
  const { standing, history, estimate } = acceptance;
  const share = `${Math.round(estimate * 100)} %`;
  if (!history || standing.kind === "unmet")
    return `${names.child} has not met ${names.food} yet; from its kin about ${share} is expected.`;
  const tasted = `${names.child} has tasted ${names.food} ${times(history.tastings)}`;
  const full =
    history.fullDays > 0
      ? ` ${count(history.fullDays, "refusal")} came on a day when the whole box came back.`
      : "";
  switch (standing.kind) {
    case "dependable":
      return `${tasted}, last ${daysAgo(history.lastDay, today)}; about ${share} of it is eaten.${full}`;
    case "mixed":
      return `${tasted} and it still varies: about ${share} is expected, give or take.${full}`;
    case "meeting":
      return `${tasted}. ${describeTastings(history.tastings)}${full}`;
    case "resting":
      return (
        `${tasted}. It came back ${daysAgo(history.lastRefusal ?? history.lastDay, today)}, ` +
        `so it rests until ${longDay(standing.until)} and is then offered again.${full}`
      );
  }
}

/** Where a number of tastings stands against the published ones. Promises nothing. */
export function describeTastings(tastings: number): string {
  const { from, to } = TASTINGS_GUIDE;
  if (tastings >= to)
    return `That is ${to} tastings or more: what is in the studies is done; it may simply not be a favourite.`;
  if (tastings >= from)
    return `In studies liking often moved after ${from} to ${to} tastings; this is number ${tastings}. It is no promise.`;
  const stop =
    tastings >= CARERS_STOP.from && tastings <= CARERS_STOP.to
      ? ` Most carers stop at ${CARERS_STOP.from} to ${CARERS_STOP.to} offers; it is early yet.`
      : "";
  return `${tastings} of the ${from} to ${to} tastings that studies gave a new food.${stop}`;
}

function times(number: number): string {
  if (number === 0) return "not once";
  if (number === 1) return "once";
  return number === 2 ? "twice" : `${number} times`;
}

function count(number: number, noun: string): string {
  return number === 1 ? `One ${noun}` : `${number} ${noun}s`;
}
