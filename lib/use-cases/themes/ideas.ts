import { ok, refuse, type Result } from "#lib/base/index.ts";
import { foodColumns, inTransaction, type Db } from "#lib/db/index.ts";
import type { SheetProblem } from "../bible/sheet-problem.ts";
import type { Context } from "../context.ts";
import { ownFood } from "../past/own-food.ts";
import type { IdeaInput, SettleIdeaInput } from "./theme.input.ts";

/** Puts a viewer's idea into the inbox. */
export async function addIdea(
  { db, today }: Context,
  { text }: IdeaInput,
): Promise<Result<undefined, SheetProblem>> {
  await db.viewerIdea.create({ data: { text, receivedOn: today } });
  return ok(undefined);
}

/**
 * Turns an idea into a theme of the pool or a food that is wished for, passes it over, or puts it back.
 * A wished food may hold every allergen until somebody has read a label.
 */
export async function settleIdea(
  { db }: Context,
  { id, into, name }: SettleIdeaInput,
): Promise<Result<undefined, SheetProblem>> {
  return inTransaction(db, async (tx) => {
    const idea = await tx.viewerIdea.findUnique({ where: { id } });
    if (!idea) return refuse({ kind: "gone" });
    if (into === "theme" && (await tx.theme.count({ where: { name } })) > 0) {
      return refuse({ kind: "theme-name-taken", field: "name" });
    }
    const becameId =
      into === "theme"
        ? (await tx.theme.create({ data: { name, note: idea.text } })).id
        : into === "food"
          ? await wishFood(tx, name)
          : null;
    await tx.viewerIdea.update({ where: { id }, data: { state: into, becameId } });
    return ok(undefined);
  });
}

async function wishFood(tx: Db, name: string): Promise<string> {
  const rows = [
    ...(await tx.food.findMany({ select: { id: true } })),
    ...(await tx.family.findMany({ select: { id: true } })),
  ];
  const food = ownFood(name, "extra", new Set(rows.map(({ id }) => id)));
  await tx.family.create({ data: { id: food.family, name, group: food.group } });
  await tx.food.create({ data: { id: food.id, ...foodColumns(food), isWish: true } });
  return food.id;
}
