import { z } from "zod";
import { Day } from "#lib/calendar/index.ts";
import { parseColumn, type Db } from "#lib/db/index.ts";
import { AIMS, DEFAULT_WEIGHTS, type Plan, type PlanProblem } from "#lib/planner/index.ts";
import { stampOf } from "../bible/stamp.ts";

const PlanShape = z.object({
  weeks: z.array(
    z.object({
      monday: Day,
      themeId: z.string().nullable(),
      lunches: z.array(z.object({ date: Day, itemIds: z.array(z.string()) })),
    }),
  ),
});

/** What the user has asked of a proposal, besides the records. */
export const Wishes = z.object({
  weights: z.record(z.enum(AIMS), z.number().min(0).max(3)),
  locks: z.array(z.object({ date: Day, itemId: z.string() })),
  lockedThemes: z.array(z.object({ monday: Day, themeId: z.string() })),
  bans: z.array(z.string()),
  preferred: z.array(z.string()),
});
export type Wishes = z.infer<typeof Wishes>;

const Proof = z.object({
  points: z.number(),
  broken: z.number(),
  /** Share by which no plan with these themes can be better; null: not proven yet. */
  gap: z.number().nullable(),
  /** Share by which no plan at all can be better, whatever its themes; null: not proven. */
  gapAll: z.number().nullable().default(null),
  /** Just proposed as a whole: the solver has yet to look for better, and the page asks it to. */
  isFresh: z.boolean().default(false),
});

const Desk = z.object({
  plan: PlanShape,
  wishes: Wishes,
  proof: Proof,
  /** Earlier plans and wishes, the last one first; what undo returns to. */
  before: z.array(z.object({ plan: PlanShape, wishes: Wishes, proof: Proof })),
});
/** A proposal on the desk: a plan, what was asked of it and how good it is proven to be. */
export type Desk = z.infer<typeof Desk>;

/** How many steps undo goes back. */
const STEPS_BACK = 12;

export const NO_WISHES: Wishes = {
  weights: { ...DEFAULT_WEIGHTS },
  locks: [],
  lockedThemes: [],
  bans: [],
  preferred: [],
};

/** A stored proposal: `open` is the one worked on, `beside` the one kept for comparison. */
export type StoredDesk = { readonly id: string; readonly desk: Desk };

/** The proposal of some weeks in a state, or undefined. */
export async function readDesk(
  db: Db,
  mondays: readonly Day[],
  state: "open" | "beside",
): Promise<StoredDesk | undefined> {
  const [fromWeek] = mondays;
  if (fromWeek === undefined) return undefined;
  const row = await db.proposal.findFirst({
    where: { fromWeek, weeks: mondays.length, state },
    orderBy: { createdAt: "desc" },
  });
  return row ? { id: row.id, desk: parseColumn(Desk, row.planJson, "Proposal.plan") } : undefined;
}

/** How a proposal stands, for a page to hand back when it is taken. */
export function stampOfDesk({ plan, wishes }: Desk): string {
  return stampOf({ plan, wishes });
}

/** The desk after a step, with the way back. */
export function stepped(desk: Desk, next: Omit<Desk, "before">): Desk {
  const { plan, wishes, proof, before } = desk;
  return { ...next, before: [{ plan, wishes, proof }, ...before].slice(0, STEPS_BACK) };
}

/**
 * The planner's question with what the user has asked added to it. What is kept out or preferred is the
 * food, in any trick; what is locked is the item as it stands.
 */
export function withWishes(problem: PlanProblem, wishes: Wishes): PlanProblem {
  const foodOf = new Map(problem.items.map(({ id, foodId }) => [id, foodId]));
  const ofSameFood = (itemId: string): string[] =>
    problem.items.filter(({ foodId }) => foodId === foodOf.get(itemId)).map(({ id }) => id);
  const known = new Set(problem.items.map(({ id }) => id));
  const weights = { ...problem.weights, ...wishes.weights };
  const themeOf = new Map(wishes.lockedThemes.map(({ monday, themeId }) => [monday, themeId]));
  const locks = [...problem.locks, ...wishes.locks.filter(({ itemId }) => known.has(itemId))];
  const held = new Set(locks.map(({ date }) => date));
  // A week that is held day by day may lack a new food, and what is held comes first.
  const isHeld = problem.weeks.some(({ days }) => days.every(({ date }) => held.has(date)));
  return {
    ...problem,
    weights,
    newFoods: isHeld ? { ...problem.newFoods, perWeekMin: 0 } : problem.newFoods,
    weeks: problem.weeks.map((week) => ({
      ...week,
      lockedThemeId: themeOf.get(week.monday) ?? week.lockedThemeId,
    })),
    locks,
    forbidden: [
      ...problem.forbidden,
      ...wishes.bans.map((itemId) => ({
        id: `your-ban-${itemId}`,
        kind: "ban" as const,
        name: "you kept it out",
        itemIds: ofSameFood(itemId),
        on: null,
      })),
    ],
    wishes: [
      ...problem.wishes,
      ...wishes.preferred.map((itemId) => ({
        ...{ itemIds: ofSameFood(itemId), date: null, points: PREFERRED },
      })),
    ],
  };
}

/** Points of a preferred item: about as much as one that all children eat up. */
const PREFERRED = 20;

/** Locks that keep a plan as it is but for some days. */
export function keepingAllBut(
  plan: Plan,
  wishes: Wishes,
  isFree: (date: Day, monday: Day) => boolean,
): Wishes {
  const kept = plan.weeks.flatMap(({ monday, lunches }) =>
    lunches
      .filter(({ date }) => !isFree(date, monday))
      .flatMap(({ date, itemIds }) => itemIds.map((itemId) => ({ date, itemId }))),
  );
  const themes = plan.weeks.flatMap(({ monday, themeId, lunches }) =>
    themeId !== null && lunches.some(({ date }) => !isFree(date, monday))
      ? [{ monday, themeId }]
      : [],
  );
  const isLocked = (date: Day, itemId: string): boolean =>
    wishes.locks.some((lock) => lock.date === date && lock.itemId === itemId);
  return {
    ...wishes,
    locks: [...wishes.locks, ...kept.filter(({ date, itemId }) => !isLocked(date, itemId))],
    lockedThemes: [...wishes.lockedThemes, ...themes],
  };
}
