import type { Context } from "../context.ts";

/** Every family of foods by name. */
export function listFamilies({
  db,
}: Context): Promise<readonly { readonly id: string; readonly name: string }[]> {
  return db.family.findMany({ orderBy: { name: "asc" }, select: { id: true, name: true } });
}
