import { ok, refuse, type Result } from "#lib/base/index.ts";
import { mondayOf, type Day } from "#lib/calendar/index.ts";
import type { Db } from "#lib/db/index.ts";
import { exchanged, proposePlan, scorePlan, type PlanProblem } from "#lib/planner/index.ts";
import type { Context } from "../context.ts";
import { planProblemFor } from "../plan-problem.ts";
import type { ChangeProposalInput } from "./change-proposal.input.ts";
import {
  keepingAllBut,
  NO_WISHES,
  readDesk,
  stepped,
  withWishes,
  type Desk,
  type StoredDesk,
  type Wishes,
} from "./desk.ts";
import { openWeeks } from "./open-weeks.ts";
import { takePlan, type TakeProblem } from "./take-plan.ts";

export type ProposalProblem =
  | { readonly kind: "nothing-open" }
  | { readonly kind: "no-proposal" }
  | { readonly kind: "nothing-to-undo" }
  | TakeProblem;

/** Search steps of a proposal on the request's own thread: a few tenths of a second. */
const STEPS = 60_000;

type Outcome = Result<{ readonly taken: number }, ProposalProblem>;
const DONE: Outcome = ok({ taken: 0 });

/**
 * One step on the desk: propose, propose a part again, swap, lock, ban, prefer, undo, keep beside,
 * exchange, drop. The slate is written only by the step `take`; a plan that breaks a rule is not taken.
 */
export async function changeProposal(
  context: Context,
  input: ChangeProposalInput,
): Promise<Outcome> {
  const { db } = context;
  if (input.step === "take") return takePlan(context, input.month, input.stamp);
  const mondays = await openWeeks(context, input.month);
  if (mondays.length === 0) return refuse({ kind: "nothing-open" });
  const stored = await readDesk(db, mondays, "open");
  if (input.step === "propose") {
    const problem = await planProblemFor(db, mondays, context.today);
    await saveDesk(db, mondays, stored, proposed(problem, stored?.desk, input));
    return DONE;
  }
  if (!stored) return refuse({ kind: "no-proposal" });
  switch (input.step) {
    case "drop":
      await db.proposal.update({ where: { id: stored.id }, data: { state: "dropped" } });
      return DONE;
    case "beside":
    case "exchange":
      await setBeside(db, mondays, stored, input.step);
      return DONE;
    case "undo": {
      const [last, ...before] = stored.desk.before;
      if (!last) return refuse({ kind: "nothing-to-undo" });
      const proof = { ...last.proof, isFresh: false };
      await saveDesk(db, mondays, stored, { ...last, proof, before });
      return DONE;
    }
    default: {
      const problem = await planProblemFor(db, mondays, context.today);
      await saveDesk(db, mondays, stored, touched(problem, stored.desk, input));
      return DONE;
    }
  }
}

/** Words for a refusal. */
export function describeProposalProblem({ kind }: ProposalProblem): string {
  switch (kind) {
    case "nothing-open":
      return "Every week of this month that is still to come has its episode.";
    case "no-proposal":
      return "There is no proposal for these weeks any more. Propose again.";
    case "nothing-to-undo":
      return "There is nothing to undo in this proposal.";
    case "rules-broken":
      return "This proposal still breaks a rule, so nothing was written. See which rules stand in the way.";
    case "changed-elsewhere":
      return "This proposal or one of its weeks was changed elsewhere since you saw it, so nothing was written. Load the page again to see how it stands.";
  }
}

/** The plan of a first or renewed proposal; what is not in its scope stays. */
function proposed(
  problem: PlanProblem,
  desk: Desk | undefined,
  input: Extract<ChangeProposalInput, { step: "propose" }>,
): Desk {
  const before = desk?.wishes ?? NO_WISHES;
  const wishes = { ...before, weights: { ...before.weights, ...input.sliders } };
  const { scope, date } = input;
  const isFree = (day: Day, monday: Day): boolean =>
    scope === "lunch" ? day === date : monday === (date && mondayOf(date));
  const keeps = desk !== undefined && scope !== "rest";
  const asked = keeps ? keepingAllBut(desk.plan, wishes, isFree) : wishes;
  const seed = `${input.month} ${desk?.before.length ?? 0} ${scope} ${date ?? ""}`;
  const free = problem.weeks.flatMap(({ monday, days }) =>
    days.map((day) => day.date).filter((day) => isFree(day, monday)),
  );
  // A lunch that stays has room for more, so its day is left alone too.
  const options = { seed, steps: STEPS, ...(keeps ? { days: free } : {}) };
  const { plan } = proposePlan(withWishes(problem, asked), options);
  // Only a whole proposal is searched on unasked: what the user has touched stays as it is.
  const proof = { ...proofOf(problem, plan, wishes), isFresh: scope === "rest" };
  const next = { plan: writable(plan), wishes, proof };
  return desk ? stepped(desk, next) : { ...next, before: [] };
}

type Touch = Extract<
  ChangeProposalInput,
  { step: "swap" | "lock" | "unlock" | "ban" | "unban" | "prefer" | "unprefer" }
>;

function touched(problem: PlanProblem, desk: Desk, input: Touch): Desk {
  const { itemId } = input;
  const { wishes } = desk;
  if (input.step === "swap") {
    const plan = writable(exchanged(desk.plan, input.date, itemId, input.otherId));
    const locks = wishes.locks.filter((lock) => lock.date !== input.date || lock.itemId !== itemId);
    const asked = { ...wishes, locks };
    return stepped(desk, { plan, wishes: asked, proof: proofOf(problem, plan, asked) });
  }
  const asked = wished(wishes, input);
  return stepped(desk, { ...desk, wishes: asked, proof: proofOf(problem, desk.plan, asked) });
}

function wished(wishes: Wishes, input: Exclude<Touch, { step: "swap" }>): Wishes {
  const { itemId } = input;
  const without = (ids: readonly string[]): string[] => ids.filter((id) => id !== itemId);
  switch (input.step) {
    case "lock":
      return { ...wishes, locks: [...wishes.locks, { date: input.date, itemId }] };
    case "unlock": {
      const isIt = (lock: Wishes["locks"][number]): boolean =>
        lock.date === input.date && lock.itemId === itemId;
      return { ...wishes, locks: wishes.locks.filter((lock) => !isIt(lock)) };
    }
    case "ban":
      return { ...wishes, bans: [...without(wishes.bans), itemId] };
    case "unban":
      return { ...wishes, bans: without(wishes.bans) };
    case "prefer":
      return { ...wishes, preferred: [...without(wishes.preferred), itemId] };
    case "unprefer":
      return { ...wishes, preferred: without(wishes.preferred) };
  }
}

function proofOf(problem: PlanProblem, plan: Desk["plan"] | PlanOf, wishes: Wishes): Desk["proof"] {
  const { points, broken } = scorePlan(withWishes(problem, wishes), plan);
  return { points, broken, gap: null, gapAll: null, isFresh: false };
}
type PlanOf = ReturnType<typeof proposePlan>["plan"];

/** A plan in the shape that is stored. */
function writable(plan: PlanOf): Desk["plan"] {
  return {
    weeks: plan.weeks.map((week) => ({
      ...week,
      lunches: week.lunches.map((lunch) => ({ ...lunch, itemIds: [...lunch.itemIds] })),
    })),
  };
}

async function saveDesk(
  db: Db,
  mondays: readonly Day[],
  stored: StoredDesk | undefined,
  desk: Desk,
): Promise<void> {
  const planJson = JSON.stringify(desk);
  if (stored) {
    await db.proposal.update({ where: { id: stored.id }, data: { planJson } });
    return;
  }
  const fromWeek = mondays[0] ?? "";
  await db.proposal.create({ data: { fromWeek, weeks: mondays.length, seed: fromWeek, planJson } });
}

/** Keeps a copy beside the desk, or exchanges the two. */
async function setBeside(
  db: Db,
  mondays: readonly Day[],
  stored: StoredDesk,
  step: "beside" | "exchange",
): Promise<void> {
  const beside = await readDesk(db, mondays, "beside");
  if (step === "exchange") {
    if (!beside) return;
    await db.proposal.update({ where: { id: stored.id }, data: { state: "beside" } });
    await db.proposal.update({ where: { id: beside.id }, data: { state: "open" } });
    return;
  }
  if (beside) await db.proposal.update({ where: { id: beside.id }, data: { state: "dropped" } });
  const fromWeek = mondays[0] ?? "";
  await db.proposal.create({
    data: {
      fromWeek,
      weeks: mondays.length,
      seed: fromWeek,
      state: "beside",
      planJson: JSON.stringify({ ...stored.desk, before: [] }),
    },
  });
}
