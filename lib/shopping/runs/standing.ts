import { z } from "zod";
import { hash32 } from "#lib/base/index.ts";
import { Day } from "#lib/calendar/index.ts";
import type { RunItem, RunLine, RunPlan, RunProblem, Trip } from "./problem.ts";

const TripShape = { shopId: z.string(), day: Day };
const ItemShape = { itemId: z.string(), name: z.string() };

const Line = z.object({
  ...TripShape,
  ...ItemShape,
  id: z.string(),
  productId: z.string(),
  productName: z.string(),
  packs: z.number(),
  packWord: z.string(),
  packGrams: z.number(),
  priceCents: z.number(),
  uses: z.array(z.object({ day: Day, grams: z.number() })),
  leftGrams: z.number(),
  leftUntil: Day.nullable(),
  fixed: z.enum(["by-hand", "bought"]).nullable(),
});

const Plan: z.ZodType<RunPlan> = z.object({
  runs: z.array(z.object({ ...TripShape, lines: z.array(Line) })),
  fromStock: z.array(
    z.object({ itemId: z.string(), lotId: z.string(), day: Day, grams: z.number() }),
  ),
  unmet: z.array(
    z.object({
      ...ItemShape,
      day: Day,
      grams: z.number(),
      why: z.enum(["sold-nowhere", "no-trip-before", "would-not-keep"]),
    }),
  ),
  goodsCents: z.number(),
  tripCents: z.number(),
  wasteCents: z.number(),
  cost: z.number(),
  bound: z.number(),
  proven: z.boolean(),
  steps: z.number(),
});

/** A plan as it stands, with a mark of what each of its items rests on; can be kept as JSON. */
export const StandingPlan = z.object({
  plan: Plan,
  leadDays: z.number(),
  /** A mark of the trips that could be made. */
  trips: z.string(),
  /** By item: equal marks mean equal needs, stock, offers and decisions. */
  bases: z.record(z.string(), z.string()),
});
export type StandingPlan = z.infer<typeof StandingPlan>;

/** A plan with the marks of the problem it answers. */
export function standingOf(problem: RunProblem, plan: RunPlan): StandingPlan {
  const bases = problem.items.map((item) => [item.id, baseOf(problem, item)] as const);
  const trips = markOf(problem.trips);
  return { plan, leadDays: problem.leadDays, trips, bases: Object.fromEntries(bases) };
}

/** True when a plan stands on exactly this: nothing needs to be planned anew. */
export function isStanding(standing: StandingPlan, problem: RunProblem): boolean {
  const { plan, leadDays, trips, bases } = standing;
  return (
    leadDays === problem.leadDays &&
    trips === markOf(problem.trips) &&
    Object.keys(bases).length === problem.items.length &&
    problem.items.every((item) => bases[item.id] === baseOf(problem, item)) &&
    plan.runs.every((run) => run.lines.every((line) => canStay(problem, line))) &&
    problem.overrides.goTo.every((made) => plan.runs.some((run) => isSameTrip(run, made)))
  );
}

/** Whether a line's trip can still be made, or was decided. */
export function canStay(
  { trips, overrides }: RunProblem,
  line: Trip & Pick<RunLine, "fixed">,
): boolean {
  if (line.fixed !== null) return true;
  const { shopId, day } = line;
  const isBanned = overrides.notTo.some(
    (ban) => (ban.shopId ?? shopId) === shopId && (ban.day ?? day) === day,
  );
  const isMade = overrides.goTo.some((made) => isSameTrip(made, line));
  return isMade || (trips.some((trip) => isSameTrip(trip, line)) && !isBanned);
}

/** Whether two trips are to the same shop on the same day. */
export function isSameTrip(one: Trip, other: Trip): boolean {
  return one.shopId === other.shopId && one.day === other.day;
}

/** The mark of everything a plan for an item rests on: two hashes of it, 64 bits. */
export function baseOf({ overrides }: RunProblem, item: RunItem): string {
  const products = new Set(item.offers.map((offer) => offer.productId));
  const decided = {
    lines: overrides.lines.filter((line) => line.itemId === item.id),
    onlyAt: overrides.onlyAt.filter((only) => only.itemId === item.id),
    noneLeft: overrides.noneLeft.filter((none) => products.has(none.productId)),
  };
  return markOf([item, decided]);
}

function markOf(value: unknown): string {
  const text = JSON.stringify(value, (_, part: unknown) =>
    typeof part === "bigint" ? `${part}` : part,
  );
  return `${hash32(text)}-${hash32(`again ${text}`)}`;
}
