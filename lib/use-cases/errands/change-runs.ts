import { randomUUID } from "node:crypto";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import { matchFood } from "#lib/catalog/index.ts";
import {
  inTransaction,
  readErrandWeek,
  readFoods,
  readOnSale,
  readSettings,
  runRow,
  writeErrandWeek,
  writeSettings,
  type Db,
  type ErrandDecisions,
} from "#lib/db/index.ts";
import { lineIdOf } from "#lib/shopping/index.ts";
import type { Context } from "../context.ts";
import type { ChangeRunsInput } from "./change-runs.input.ts";
import { ensureShop } from "./ensure-shop.ts";
import { isAssumed } from "./offers.ts";
import { BESIDES, foodOf } from "./week-problem.ts";

export type ChangeRunsProblem = {
  readonly kind: "shop-gone" | "line-gone" | "line-ticked" | "day-over";
};

type Change<Kind extends ChangeRunsInput["kind"]> = Extract<ChangeRunsInput, { kind: Kind }>;

/**
 * A decision of the user about runs or lines. It is kept beside the plan, which from then on only fills in
 * the rest. Refuses a shop or line that is gone, and a new trip on a day that is over.
 */
export async function changeRuns(
  { db, today }: Context,
  input: ChangeRunsInput,
): Promise<Result<undefined, ChangeRunsProblem>> {
  return inTransaction(db, async (tx) => {
    if ("shopId" in input && input.shopId !== "") {
      await ensureShop(tx, input.shopId);
      const shop = await tx.shop.findUnique({ where: { id: input.shopId } });
      if (!shop || shop.retiredAt) return refuse({ kind: "shop-gone" });
    }
    const isNewTrip = input.kind === "go" || input.kind === "fix-line" || input.kind === "add-line";
    if (isNewTrip && input.day < today) return refuse({ kind: "day-over" });
    switch (input.kind) {
      case "go":
      case "stay-away":
      case "leave-open":
        return ok(await decideTrip(tx, input));
      case "done":
        return ok(await markDone(tx, input));
      case "only-at":
        return ok(await decideShop(tx, input));
      case "fix-line":
        return fixLine(tx, input);
      case "free-line":
        return freeLine(tx, input);
      case "add-line":
        return ok(await addLine(tx, input, today));
    }
  });
}

/** Words for a refusal. */
export function describeChangeRunsProblem({ kind }: ChangeRunsProblem): string {
  switch (kind) {
    case "shop-gone":
      return "That shop is no longer on record.";
    case "line-gone":
      return "That line is no longer on the list. Look at the list again.";
    case "line-ticked":
      return "That line is ticked already. Take the tick back first.";
    case "day-over":
      return "That day is over.";
  }
}

async function decideTrip(
  tx: Db,
  { kind, monday, shopId, day }: Change<"go" | "stay-away" | "leave-open">,
): Promise<undefined> {
  const run = await runRow(tx, { shopId, day, weekOf: monday });
  await tx.errandRun.update({ where: { id: run.id }, data: { byHand: kind === "go" } });
  if (kind !== "go") {
    await tx.errandLine.deleteMany({
      where: { runId: run.id, byHand: true, state: "open", foodId: { not: null } },
    });
  }
  await decide(tx, monday, (decisions) => {
    const others = decisions.notTo.filter((trip) => trip.shopId !== shopId || trip.day !== day);
    return { notTo: kind === "stay-away" ? [...others, { shopId, day }] : others };
  });
}

async function markDone(
  tx: Db,
  { monday, shopId, day, isDone }: Change<"done">,
): Promise<undefined> {
  const run = await runRow(tx, { shopId, day, weekOf: monday });
  await tx.errandRun.update({
    where: { id: run.id },
    data: { doneAt: isDone ? new Date(`${day}T12:00:00Z`) : null },
  });
}

async function decideShop(tx: Db, { foodId, shopId }: Change<"only-at">): Promise<undefined> {
  const { onlyAt } = await readSettings(tx);
  const others = onlyAt.filter((only) => only.foodId !== foodId);
  await writeSettings(tx, { onlyAt: shopId === "" ? others : [...others, { foodId, shopId }] });
}

async function decide(
  tx: Db,
  monday: Day,
  change: (decisions: ErrandDecisions) => Partial<ErrandDecisions>,
): Promise<void> {
  const { decisions } = await readErrandWeek(tx, monday);
  await writeErrandWeek(tx, monday, { decisions: { ...decisions, ...change(decisions) } });
}

/** The line keeps its name when its trip stays; on another trip it is that trip's line. */
async function fixLine(
  tx: Db,
  { monday, shopId, day, lineId, packs }: Change<"fix-line">,
): Promise<Result<undefined, ChangeRunsProblem>> {
  const { standing } = await readErrandWeek(tx, monday);
  const lines = standing?.plan.runs.flatMap((run) => run.lines) ?? [];
  const line = lines.find((one) => one.id === lineId.replace(/#\d+$/, ""));
  if (!line) return refuse({ kind: "line-gone" });
  const run = await runRow(tx, { shopId, day, weekOf: monday });
  const id = lineIdOf(line.itemId, line.productId, shopId, day);
  const known = await tx.errandLine.findUnique({ where: { id } });
  if (known && known.state !== "open") return refuse({ kind: "line-ticked" });
  if (id !== lineId) await tx.errandLine.deleteMany({ where: { id: lineId, state: "open" } });
  const foodId = foodOf({ id: line.itemId });
  const productId = isAssumed(line.productId) ? null : line.productId;
  const data = { packs, byHand: true, state: "open" };
  await tx.errandLine.upsert({
    where: { id },
    create: { id, runId: run.id, foodId, productId, ...data },
    update: data,
  });
  return ok(undefined);
}

async function freeLine(
  tx: Db,
  { lineId }: Change<"free-line">,
): Promise<Result<undefined, ChangeRunsProblem>> {
  const { count } = await tx.errandLine.deleteMany({
    where: { id: lineId, byHand: true, state: "open" },
  });
  return count === 0 ? refuse({ kind: "line-gone" }) : ok(undefined);
}

/**
 * Words that name a food surely become that food. If a lunch asks for it and the shop sells it, the line
 * counts for the lunch; else it is bought besides.
 */
async function addLine(
  tx: Db,
  { monday, shopId, day, label, packs }: Change<"add-line">,
  today: Day,
): Promise<undefined> {
  const run = await runRow(tx, { shopId, day, weekOf: monday });
  const food = matchFood(label, await readFoods(tx)).best?.food;
  const sold = food ? await readOnSale(tx, [food.id], today) : [];
  const productId = sold.find((row) => row.shopId === shopId)?.productId ?? null;
  const { standing } = await readErrandWeek(tx, monday);
  const itemId = Object.keys(standing?.bases ?? {}).find((id) => foodOf({ id }) === food?.id);
  const planned = itemId && productId ? lineIdOf(itemId, productId, shopId, day) : undefined;
  const isKnown =
    planned !== undefined && (await tx.errandLine.findUnique({ where: { id: planned } })) !== null;
  const id = planned === undefined || isKnown ? `${BESIDES} ${randomUUID()}` : planned;
  const data = { foodId: food?.id ?? null, productId, label, packs, byHand: true };
  await tx.errandLine.create({ data: { id, runId: run.id, ...data } });
}
