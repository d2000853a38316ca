import { keepUntilWritten, type Db } from "#lib/db/index.ts";

/** Names by id; an id that is gone stands for itself. */
export type Names = {
  readonly food: (id: string) => string;
  readonly trick: (id: string) => string;
  readonly theme: (id: string) => string;
};

/** Names of all foods, tricks and themes, retired ones too; shared until something is written. */
export function readNames(db: Db): Promise<Names> {
  return keepUntilWritten(db, "names", async () => {
    const select = { id: true, name: true } as const;
    const [foods, tricks, themes] = await Promise.all([
      db.food.findMany({ select }),
      db.trick.findMany({ select }),
      db.theme.findMany({ select }),
    ]);
    return { food: namer(foods), trick: namer(tricks), theme: namer(themes) };
  });
}

function namer(rows: readonly { id: string; name: string }[]): (id: string) => string {
  const names = new Map(rows.map(({ id, name }) => [id, name]));
  return (id) => names.get(id) ?? id;
}
