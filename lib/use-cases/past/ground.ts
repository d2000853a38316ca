import type { Food } from "#lib/catalog/index.ts";
import { readChildren, readFoodsById, readShops, readTricks, type Db } from "#lib/db/index.ts";

/** What a file of earlier weeks is read against. */
export type PastGround = {
  /** Every food that was not merged into another, retired ones too: they were on in their time. */
  readonly foods: readonly Food[];
  readonly children: readonly { readonly id: string; readonly names: readonly string[] }[];
  readonly shops: readonly { readonly id: string; readonly name: string }[];
  readonly tricks: readonly { readonly id: string; readonly name: string }[];
  readonly themes: readonly { readonly id: string; readonly name: string }[];
};

/** Reads the ground for a file of earlier weeks. */
export async function readPastGround(db: Db): Promise<PastGround> {
  const ids = await db.food.findMany({
    where: { mergedIntoId: null },
    orderBy: { id: "asc" },
    select: { id: true },
  });
  const foods = await readFoodsById(
    db,
    ids.map(({ id }) => id),
  );
  const children = await readChildren(db);
  return {
    foods: [...foods.values()],
    children: children.map(({ id, onScreenName, privateName }) => ({
      id,
      names: [onScreenName, privateName],
    })),
    shops: await readShops(db),
    tricks: await readTricks(db),
    themes: await db.theme.findMany({ orderBy: { id: "asc" }, select: { id: true, name: true } }),
  };
}
