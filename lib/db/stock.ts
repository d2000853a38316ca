import { Day } from "#lib/calendar/index.ts";
import { PLACES, type Lot, type Place } from "#lib/shopping/index.ts";
import type { Db } from "./client.ts";
import type { Prisma } from "./generated/client.ts";

/** A lot on hand as stored. */
export type LotRecord = Lot & {
  readonly foodName: string;
  readonly productName: string | null;
  readonly paidCents: number | null;
  /** A recalled lot serves no lunch. */
  readonly isRecalled: boolean;
};

const include = {
  food: { select: { name: true, recalledAt: true } },
  product: { select: { name: true, recalledAt: true } },
} as const satisfies Prisma.StockInclude;

type LotRow = Prisma.StockGetPayload<{ include: typeof include }>;

/** Every lot on hand, in the order they came; recalled ones are marked. */
export async function readLotRecords(db: Db): Promise<LotRecord[]> {
  const rows = await db.stock.findMany({
    where: { goneOn: null },
    include,
    orderBy: [{ boughtOn: "asc" }, { id: "asc" }],
  });
  return rows.map(lotOfRow);
}

/** What changes of a lot over its life, as columns. */
export function lotColumns({
  grams,
  boughtOn,
  openedOn,
  useBy,
  place,
}: Lot): Pick<
  Prisma.StockUncheckedCreateInput,
  "grams" | "boughtOn" | "openedOn" | "useBy" | "place"
> {
  return { grams, boughtOn, openedOn, useBy, place };
}

function lotOfRow(row: LotRow): LotRecord {
  return {
    id: row.id,
    foodId: row.foodId,
    foodName: row.food.name,
    productId: row.productId,
    productName: row.product?.name ?? null,
    grams: row.grams,
    boughtOn: dayOrNull(row.boughtOn),
    openedOn: dayOrNull(row.openedOn),
    cutOn: null,
    preparedOn: null,
    useBy: dayOrNull(row.useBy),
    place: placeOf(row.place),
    paidCents: row.paidCents,
    isRecalled: row.food.recalledAt !== null || (row.product?.recalledAt ?? null) !== null,
  };
}

function dayOrNull(text: string | null): Day | null {
  return text === null ? null : Day.parse(text);
}

function placeOf(text: string): Place {
  const place = PLACES.find((one) => one === text);
  if (!place) throw new Error(`A lot is kept in "${text}", which is no place.`);
  return place;
}
