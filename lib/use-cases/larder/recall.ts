import { z } from "zod";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import { day, type Day } from "#lib/calendar/index.ts";
import { inTransaction, type Db } from "#lib/db/index.ts";
import type { Context } from "../context.ts";

/** A recall set or lifted, with where the notice stands. */
export const RecallInput = z
  .object({
    kind: z.enum(["food", "product"]),
    id: z.string().min(1).max(120),
    isRecalled: z.boolean(),
    note: z.string().trim().max(500, { error: "Keep the note under 500 letters." }),
  })
  .refine(({ isRecalled, note }) => !isRecalled || note !== "", {
    error: "Write what the notice says: which lots, whose notice, where it can be read.",
    path: ["note"],
  });
export type RecallInput = z.infer<typeof RecallInput>;

export type RecallProblem = { readonly kind: "gone" };

/** Marks a food or product as recalled, or lifts the mark. */
export async function recall(
  { db, now }: Context,
  { kind, id, isRecalled, note }: RecallInput,
): Promise<Result<undefined, RecallProblem>> {
  return inTransaction(db, async (tx) => {
    const data = { recalledAt: isRecalled ? now : null, recallNote: isRecalled ? note : "" };
    const { count } =
      kind === "food"
        ? await tx.food.updateMany({ where: { id, mergedIntoId: null }, data })
        : await tx.product.updateMany({ where: { id }, data });
    return count === 1 ? ok(undefined) : refuse({ kind: "gone" });
  });
}

/** Words for a refusal. */
export function describeRecallProblem({ kind }: RecallProblem): string {
  switch (kind) {
    case "gone":
      return "This is no longer on record. Open the Larder again.";
  }
}

/** Everything that holds what was recalled. */
export type Holders = {
  readonly lunches: readonly {
    readonly itemId: string;
    readonly date: Day;
    readonly fate: string;
    readonly title: string;
  }[];
  readonly lots: readonly {
    readonly id: string;
    readonly grams: number;
    readonly place: string;
    readonly boughtOn: Day | null;
  }[];
  readonly drafts: readonly {
    readonly id: string;
    readonly kind: string;
    readonly title: string;
    readonly publishedOn: string | null;
  }[];
};

/**
 * Every lunch (scrapped items too), lot on hand and draft that holds a food, or one product of it. A
 * product's list also has the lunches and lots of its food where nobody noted which product it was:
 * the list is for looking, so it leaves nothing out.
 */
export async function readHolders(
  db: Db,
  food: { readonly id: string; readonly name: string },
  productId?: string,
): Promise<Holders> {
  const held =
    productId === undefined
      ? { foodId: food.id }
      : { foodId: food.id, OR: [{ productId }, { productId: null }] };
  const [items, lots] = await Promise.all([
    db.lunchItem.findMany({
      where: held,
      orderBy: { lunch: { date: "desc" } },
      select: {
        id: true,
        fate: true,
        lunch: {
          select: {
            date: true,
            episodeId: true,
            episode: { select: { workingTitle: true, theme: { select: { name: true } } } },
          },
        },
      },
    }),
    db.stock.findMany({ where: { ...held, goneOn: null }, orderBy: { boughtOn: "desc" } }),
  ]);
  const marks = [productId ?? food.id, ...items.map(({ id }) => id)];
  return {
    lunches: items.map(({ id, fate, lunch }) => ({
      ...{ itemId: id, fate, date: day(lunch.date) },
      title: lunch.episode.theme?.name ?? (lunch.episode.workingTitle || "Untitled week"),
    })),
    lots: lots.map(({ id, grams, place, boughtOn }) => ({
      ...{ id, grams, place },
      boughtOn: boughtOn === null ? null : day(boughtOn),
    })),
    drafts: await readDrafts(db, food.name, marks),
  };
}

/** Drafts that rest on one of some records, or that name the food. */
async function readDrafts(
  db: Db,
  name: string,
  marks: readonly string[],
): Promise<Holders["drafts"]> {
  const quoted = JSON.stringify(marks.map((mark) => `"${mark}"`));
  const rows = await db.$queryRaw<readonly { readonly id: string }[]>`
    SELECT "id" FROM "Draft" d WHERE instr(lower(d."body"), lower(${name})) > 0
      OR EXISTS (SELECT 1 FROM json_each(${quoted}) m WHERE instr(d."generatedJson", m.value) > 0)`;
  const drafts = await db.draft.findMany({
    where: { id: { in: rows.map(({ id }) => id) } },
    orderBy: { createdAt: "desc" },
    include: { episode: { include: { theme: { select: { name: true } } } } },
  });
  return drafts.map(({ id, kind, publishedOn, episode }) => ({
    ...{ id, kind, publishedOn },
    title: episode?.theme?.name ?? (episode?.workingTitle || "no episode"),
  }));
}
