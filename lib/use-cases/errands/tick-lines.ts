import type { Day } from "#lib/calendar/index.ts";
import {
  inTransaction,
  readErrandRuns,
  readErrandWeek,
  readFoodsById,
  runRow,
  type Db,
  type ErrandLineRecord,
} from "#lib/db/index.ts";
import { mergeTicks, type RunLine, type Tick, type Ticks } from "#lib/shopping/index.ts";
import type { Context } from "../context.ts";
import { isAssumed } from "./offers.ts";
import { ensureShop } from "./ensure-shop.ts";
import { putAway, takeBack } from "./put-away.ts";
import type { TickLinesInput } from "./tick-lines.input.ts";
import { foodOf } from "./week-problem.ts";

/** What all devices together know of the week's lines. */
export type Ticked = {
  readonly ticks: readonly Tick[];
  /** Lines that are neither planned nor recorded any more: their ticks were not kept. */
  readonly goneIds: readonly string[];
};

/**
 * Keeps the ticks of a device, each once and in the order of their stamps whichever arrives first, so
 * that two people who tick at once agree in the end. A line bought becomes a lot of stock, a price paid
 * becomes the product's price in that shop.
 */
export async function tickLines({ db, today }: Context, input: TickLinesInput): Promise<Ticked> {
  return inTransaction(db, async (tx) => {
    const { standing } = await readErrandWeek(tx, input.monday);
    const recorded = new Map(
      (await readErrandRuns(tx, input.monday)).flatMap((run) =>
        run.lines.map((line) => [line.id, line] as const),
      ),
    );
    const planned = new Map(
      (standing?.plan.runs ?? []).flatMap((run) =>
        run.lines.map((line) => [line.id, line] as const),
      ),
    );
    const known = ticksOf([...recorded.values()]);
    const sent = new Map(input.ticks.map((tick) => [tick.lineId, tick]));
    const merged = mergeTicks(known, sent);
    const goneIds: string[] = [];
    for (const tick of input.ticks) {
      if (merged.get(tick.lineId) !== tick) continue;
      const line = lineOf(tick, recorded.get(tick.lineId), planned.get(baseId(tick.lineId)));
      if (line) await keepTick(tx, input.monday, tick, line, today);
      else goneIds.push(tick.lineId);
    }
    return {
      ticks: [...merged.values()].filter(({ lineId }) => !goneIds.includes(lineId)),
      goneIds,
    };
  });
}

/** Recorded lines as ticks. */
function ticksOf(lines: readonly ErrandLineRecord[]): Ticks {
  return new Map(
    lines.map(({ id, state, packs, paidCents, stamp }) => [
      id,
      { lineId: id, state, packs, paidCents, stamp },
    ]),
  );
}

/** A line ticked before for less than is needed now goes on under the same name with a number. */
function baseId(lineId: string): string {
  return lineId.replace(/#\d+$/, "");
}

/** What a tick is about, whether the line is recorded already or only planned. */
type LineToTick = {
  readonly foodId: string | null;
  readonly productId: string | null;
  /** Grams of one pack as planned; null when it is not planned any more, or never was. */
  readonly packGrams: number | null;
  /** Packs it was bought with before; null when it was not. */
  readonly packsBefore: number | null;
  readonly byHand: boolean;
};

function lineOf(
  tick: TickLinesInput["ticks"][number],
  record: ErrandLineRecord | undefined,
  plan: RunLine | undefined,
): LineToTick | undefined {
  const packsBefore = record?.state === "bought" ? record.packs : null;
  const byHand = record?.byHand ?? false;
  if (plan && plan.shopId === tick.shopId && plan.day === tick.day) {
    const foodId = foodOf({ id: plan.itemId });
    const productId = isAssumed(plan.productId) ? null : plan.productId;
    return { foodId, productId, packGrams: plan.packGrams, packsBefore, byHand };
  }
  if (!record) return undefined;
  return {
    foodId: record.foodId,
    productId: record.productId,
    packGrams: null,
    packsBefore,
    byHand,
  };
}

async function keepTick(
  tx: Db,
  monday: Day,
  tick: TickLinesInput["ticks"][number],
  line: LineToTick,
  today: Day,
): Promise<void> {
  const { lineId: id, state, packs, paidCents, stamp, shopId, day } = tick;
  await ensureShop(tx, shopId);
  const run = await runRow(tx, { shopId, day, weekOf: monday });
  const data = { state, packs, paidCents, stamp };
  const { foodId, productId, byHand } = line;
  await tx.errandLine.upsert({
    where: { id },
    create: { id, runId: run.id, foodId, productId, byHand, ...data },
    update: data,
  });
  if (state === "bought") {
    const on = day < today ? day : today;
    const packGrams = line.packGrams ?? (await packGramsOnRecord(tx, productId));
    await putAway(tx, { ...tick, ...line, packGrams, on }, await shelfOf(tx, foodId));
  } else if (line.packsBefore !== null) await takeBack(tx, id);
}

async function shelfOf(tx: Db, foodId: string | null) {
  if (foodId === null) return undefined;
  return (await readFoodsById(tx, [foodId])).get(foodId)?.shelf;
}

async function packGramsOnRecord(tx: Db, productId: string | null): Promise<number | null> {
  if (productId === null) return null;
  const product = await tx.product.findUnique({ where: { id: productId } });
  return product?.packGrams ?? null;
}
