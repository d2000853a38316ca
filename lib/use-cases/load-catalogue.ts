import type { Food, Trick } from "#lib/catalog/index.ts";
import type { SeasonWindow } from "#lib/calendar/index.ts";
import { foodColumns, inTransaction, type Database, type Db } from "#lib/db/index.ts";

/** The reference catalogue as the seed hands it over. */
export type Catalogue = {
  readonly version: number;
  readonly foods: readonly {
    readonly food: Food;
    readonly sources: Readonly<Record<string, string | undefined>>;
  }[];
  readonly families: readonly {
    readonly id: string;
    readonly name: string;
    readonly group: string;
  }[];
  readonly tricks: readonly Trick[];
  readonly themes: readonly {
    readonly id: string;
    readonly name: string;
    readonly motifs: readonly string[];
    readonly palette: readonly string[];
    readonly season: SeasonWindow;
    readonly note: string;
  }[];
};

const KEY = "catalogueVersion";

/**
 * Brings the Larder's reference rows up to a version of the catalogue, all or nothing.
 * What the user edited, retired or merged stays as it is; aliases of the user's own are kept.
 * Returns how many foods were written; 0 when the version is loaded already.
 */
export async function loadCatalogue(db: Database, catalogue: Catalogue): Promise<number> {
  const loaded = await db.setting.findUnique({ where: { key: KEY } });
  if (loaded && Number(loaded.valueJson) >= catalogue.version) return 0;
  return inTransaction(db, async (tx) => {
    await writeFamilies(tx, catalogue);
    const written = await writeFoods(tx, catalogue);
    await writeTricks(tx, catalogue);
    await writeThemes(tx, catalogue);
    const valueJson = String(catalogue.version);
    await tx.setting.upsert({
      where: { key: KEY },
      create: { key: KEY, valueJson },
      update: { valueJson },
    });
    return written;
  });
}

async function writeFamilies(tx: Db, { families }: Catalogue): Promise<void> {
  const known = new Set((await tx.family.findMany({ select: { id: true } })).map(({ id }) => id));
  await tx.family.createMany({ data: families.filter(({ id }) => !known.has(id)) });
}

async function writeFoods(tx: Db, { foods, version }: Catalogue): Promise<number> {
  const rows = await tx.food.findMany({
    select: {
      id: true,
      editedAt: true,
      retiredAt: true,
      mergedIntoId: true,
      catalogueVersion: true,
    },
  });
  const known = new Map(rows.map((row) => [row.id, row]));
  const fresh = foods.filter(({ food }) => !known.has(food.id));
  const changed = foods.filter(({ food }) => {
    const row = known.get(food.id);
    return row?.catalogueVersion != null && !row.editedAt && !row.retiredAt && !row.mergedIntoId;
  });
  const columns = ({ food, sources }: Catalogue["foods"][number]) => ({
    ...foodColumns(food),
    sourcesJson: JSON.stringify(sources),
    catalogueVersion: version,
  });
  await tx.food.createMany({
    data: fresh.map((entry) => ({ id: entry.food.id, ...columns(entry) })),
  });
  for (const entry of changed) {
    await tx.food.update({ where: { id: entry.food.id }, data: columns(entry) });
  }
  const touched = [...fresh, ...changed];
  await tx.foodAlias.deleteMany({
    where: { origin: "reference", foodId: { in: changed.map(({ food }) => food.id) } },
  });
  await tx.foodAlias.createMany({
    data: touched.flatMap(({ food }) =>
      food.aliases.map((name) => ({ foodId: food.id, name, origin: "reference" })),
    ),
  });
  return touched.length;
}

async function writeTricks(tx: Db, { tricks, version }: Catalogue): Promise<void> {
  const rows = await tx.trick.findMany({ select: { id: true } });
  const known = new Set(rows.map(({ id }) => id));
  await tx.trick.createMany({
    data: tricks
      .filter(({ id }) => !known.has(id))
      .map((trick) => ({
        id: trick.id,
        name: trick.name,
        kind: trick.kind,
        motifsJson: JSON.stringify(trick.motifs),
        coloursJson: JSON.stringify(trick.colours),
        minutes: trick.minutes,
        needsSliceable: trick.needsSliceable,
        catalogueVersion: version,
      })),
  });
}

async function writeThemes(tx: Db, { themes }: Catalogue): Promise<void> {
  const rows = await tx.theme.findMany({ select: { id: true } });
  const known = new Set(rows.map(({ id }) => id));
  await tx.theme.createMany({
    data: themes
      .filter(({ id }) => !known.has(id))
      .map((theme) => ({
        id: theme.id,
        name: theme.name,
        motifsJson: JSON.stringify(theme.motifs),
        paletteJson: JSON.stringify(theme.palette),
        seasonJson: JSON.stringify(theme.season),
        note: theme.note,
        isReference: true,
      })),
  });
}
