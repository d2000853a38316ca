import { groupBy } from "#lib/base/index.ts";
import { longWeekday, type Day } from "#lib/calendar/index.ts";
import type { ErrandLineRecord, ShopRecord } from "#lib/db/index.ts";
import { describePacks, type LineState, type RunLine } from "#lib/shopping/index.ts";
import { isAssumed } from "./offers.ts";
import type { StandingWeek } from "./standing-week.ts";
import { tellLine } from "./tell-line.ts";
import { foodOf, productOf } from "./week-problem.ts";

/** A line of a run as pages show it. */
export type LineView = {
  readonly id: string;
  readonly foodId: string | null;
  readonly name: string;
  readonly aisle: string;
  readonly packs: number;
  /** "2 packs of 340 g"; empty for what was added in words alone. */
  readonly amount: string;
  /** The weekdays it is first used on. */
  readonly forDays: readonly string[];
  /** As planned, for all its packs; null when no price is known. */
  readonly cents: number | null;
  readonly paidCents: number | null;
  readonly state: LineState;
  readonly stamp: string;
  /** "3 × ¼ cup → 92 g → 1 pack of 340 g, 248 g left for Thursday"; empty where nothing was counted. */
  readonly arithmetic: string;
  readonly isOnlyThere: boolean;
  /** The user buys the food only at this shop, whoever else sells it. */
  readonly isOnlyThereByHand: boolean;
  /** No product of the food is on record: pack and price are assumed. */
  readonly isAssumed: boolean;
  readonly isByHand: boolean;
  /** Shops that sell it; empty where it is not asked for by a lunch. */
  readonly sellers: readonly string[];
};

/** A run as pages show it, its lines by aisle in the user's order. */
export type RunView = {
  readonly shopId: string;
  readonly shopName: string;
  readonly hours: string;
  readonly note: string;
  readonly day: Day;
  readonly isOver: boolean;
  readonly isDone: boolean;
  readonly isByHand: boolean;
  readonly aisles: readonly { readonly name: string; readonly lines: readonly LineView[] }[];
  /** What is open or bought on it. */
  readonly cents: number;
};

/** The runs of a week: what is planned, with what was ticked, priced and added. */
export function runViews(
  week: StandingWeek,
  names: ReadonlyMap<string, string>,
): readonly RunView[] {
  const { ground, records, plan } = week;
  const recorded = new Map(
    records.runs.flatMap((run) => run.lines.map((line) => [line.id, line] as const)),
  );
  const planned = plan.runs.flatMap((run) => run.lines.map((line) => withFreeId(line, recorded)));
  const plannedIds = new Set(planned.map((line) => line.id));
  const trips = new Map(
    [...plan.runs, ...records.runs].map(({ shopId, day }) => [`${day} ${shopId}`, { shopId, day }]),
  );
  return [...trips]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .flatMap(([key, { shopId, day }]) => {
      const shop = ground.shops.find((one) => one.id === shopId);
      if (!shop) return [];
      const run = records.runs.find((one) => `${one.day} ${one.shopId}` === key);
      const lines = [
        ...planned
          .filter((line) => line.shopId === shopId && line.day === day)
          .map((line) => plannedLine(week, line, recorded.get(line.id))),
        ...(run?.lines ?? [])
          .filter((line) => !plannedIds.has(line.id) && isShown(line))
          .map((line) => recordedLine(week, line, names)),
      ];
      if (lines.length === 0 && !run?.byHand && !run?.isDone) return [];
      return [
        {
          ...{ shopId, day, shopName: shop.name, hours: shop.hours, note: shop.note },
          isOver: day < ground.today,
          isDone: run?.isDone ?? false,
          isByHand: run?.byHand ?? false,
          aisles: byAisle(shop, lines),
          cents: lines.reduce((sum, line) => sum + costOf(line), 0),
        },
      ];
    });
}

/** What a line adds to the cost: as paid, else as planned; nothing when it was not had. */
export function costOf({ state, paidCents, cents }: LineView): number {
  return state === "none-left" || state === "dropped" ? 0 : (paidCents ?? cents ?? 0);
}

/** A planned line whose id was ticked before, for less than is needed now, is a line of its own. */
function withFreeId(line: RunLine, recorded: ReadonlyMap<string, ErrandLineRecord>): RunLine {
  let id = line.id;
  for (let count = 2; (recorded.get(id)?.state ?? "open") !== "open"; count += 1) {
    id = `${line.id}#${count}`;
  }
  return { ...line, id };
}

/** By-hand lines stay when no lunch asks for them; an untouched line that is no longer planned goes. */
function isShown({ state, byHand, packs }: ErrandLineRecord): boolean {
  return state !== "open" || (byHand && packs > 0);
}

function plannedLine(
  week: StandingWeek,
  line: RunLine,
  record: ErrandLineRecord | undefined,
): LineView {
  const foodId = foodOf({ id: line.itemId });
  const sale = saleOf(week, line.productId, line.shopId);
  const days = [...new Set(line.uses.map((use) => use.day))].sort();
  return {
    id: line.id,
    foodId,
    name: line.productName,
    aisle: sale?.aisle ?? assumedAisle(week, foodId, line.shopId),
    packs: line.packs,
    amount: describePacks(line.packs, line.packWord, line.packGrams),
    forDays: days.map(longWeekday),
    cents: line.packs * line.priceCents,
    paidCents: record?.paidCents ?? null,
    state: "open",
    stamp: record?.stamp ?? "",
    arithmetic: tellLine(week.question.needs, week.plan, line),
    isOnlyThere: sale?.onlyThere ?? false,
    isOnlyThereByHand: isOnlyAt(week, foodId, line.shopId),
    isAssumed: isAssumed(line.productId),
    isByHand: line.fixed === "by-hand",
    sellers: [
      ...new Set(week.question.foods.get(foodId)?.offers.map((offer) => offer.shopId) ?? []),
    ],
  };
}

function recordedLine(
  week: StandingWeek,
  line: ErrandLineRecord,
  names: ReadonlyMap<string, string>,
): LineView {
  const sale = saleOf(week, productOf(line), line.shopId);
  const name = names.get(line.productId ?? line.foodId ?? "") ?? line.label;
  const price = sale?.cents ?? null;
  return {
    id: line.id,
    foodId: line.foodId,
    name: name === "" ? line.label : name,
    aisle: sale?.aisle ?? (line.foodId ? assumedAisle(week, line.foodId, line.shopId) : ""),
    packs: line.packs,
    amount: line.foodId === null ? "" : `${line.packs} ${line.packs === 1 ? "pack" : "packs"}`,
    forDays: [],
    cents: price === null ? null : price * line.packs,
    paidCents: line.paidCents,
    state: line.state,
    stamp: line.stamp,
    arithmetic: week.records.record.told[line.id] ?? "",
    isOnlyThere: sale?.onlyThere ?? false,
    isOnlyThereByHand: isOnlyAt(week, line.foodId, line.shopId),
    isAssumed: line.foodId !== null && line.productId === null,
    isByHand: line.byHand,
    sellers: [],
  };
}

function isOnlyAt({ ground }: StandingWeek, foodId: string | null, shopId: string): boolean {
  return ground.settings.onlyAt.some((only) => only.foodId === foodId && only.shopId === shopId);
}

function saleOf({ ground }: StandingWeek, productId: string, shopId: string) {
  return ground.onSale.find((row) => row.productId === productId && row.shopId === shopId);
}

/** Where the shop keeps most of that group of foods. */
function assumedAisle({ ground }: StandingWeek, foodId: string, shopId: string): string {
  const group = ground.foods.get(foodId)?.group;
  return ground.places.find((one) => one.group === group && one.shopId === shopId)?.aisle ?? "";
}

/** Aisles in the order the user walks them; others after, those without an aisle last. */
function byAisle(shop: ShopRecord, lines: readonly LineView[]): RunView["aisles"] {
  const rank = (name: string): number => {
    const index = shop.aisles.indexOf(name);
    if (index >= 0) return index;
    return name === "" ? shop.aisles.length + 1 : shop.aisles.length;
  };
  return [...groupBy(lines, (line) => line.aisle)]
    .sort(([one], [other]) => rank(one) - rank(other) || (one < other ? -1 : 1))
    .map(([name, own]) => ({
      name,
      lines: [...own].sort((one, other) => (one.name < other.name ? -1 : 1)),
    }));
}
