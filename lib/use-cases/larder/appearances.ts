import { day, type Day } from "#lib/calendar/index.ts";
import { describeAmount } from "#lib/catalog/index.ts";
import type { Db } from "#lib/db/index.ts";

/** What is asked after: a food, a product, a trick or a theme. */
export type Subject = {
  readonly kind: "food" | "product" | "trick" | "theme";
  readonly id: string;
};

/** One time that something was on, or is to be. */
export type Appearance = {
  readonly itemId: string;
  readonly date: Day;
  readonly weekOf: Day;
  readonly episode: number;
  readonly title: string;
  readonly food: string;
  readonly part: string;
  readonly amount: string;
  readonly fate: string;
  readonly reason: string;
  readonly tricks: readonly string[];
  readonly product: string | null;
  readonly verdicts: readonly {
    readonly child: string;
    /** Quarters eaten, null when nobody saw. */
    readonly eaten: number | null;
    readonly quote: string;
  }[];
};

const APPEARANCES_PAGE = 20;

/** One page of what has been and is to be on, latest first, and how many there are in all. */
export async function readAppearances(
  db: Db,
  subject: Exclude<Subject, { kind: "theme" }>,
  page = 1,
): Promise<{ readonly appearances: readonly Appearance[]; readonly total: number }> {
  const where = whereOf(subject);
  const [rows, total] = await Promise.all([
    db.lunchItem.findMany({
      where,
      orderBy: [{ lunch: { date: "desc" } }, { position: "asc" }],
      skip: (page - 1) * APPEARANCES_PAGE,
      take: APPEARANCES_PAGE,
      include: {
        food: { select: { name: true } },
        product: { select: { name: true } },
        tricks: { select: { trick: { select: { name: true } } } },
        reactions: {
          select: { eaten: true, quote: true, child: { select: { onScreenName: true } } },
          orderBy: { child: { position: "asc" } },
        },
        lunch: { include: { episode: { include: { theme: { select: { name: true } } } } } },
      },
    }),
    db.lunchItem.count({ where }),
  ]);
  const appearances = rows.map((row) => {
    const { episode } = row.lunch;
    return {
      ...{ itemId: row.id, part: row.part, fate: row.fate, reason: row.reason },
      ...{ date: day(row.lunch.date), weekOf: day(episode.weekOf), episode: episode.number },
      title: episode.theme?.name ?? (episode.workingTitle || "Untitled week"),
      food: row.food.name,
      amount: describeAmount(row.amount, row.unit),
      tricks: row.tricks.map(({ trick }) => trick.name),
      product: row.product?.name ?? null,
      verdicts: row.reactions.map(({ child, eaten, quote }) => ({
        ...{ child: child.onScreenName, eaten, quote },
      })),
    };
  });
  return { appearances, total };
}

/** Pages of a list of so many appearances, at least one. */
export function appearancePages(total: number): number {
  return Math.max(1, Math.ceil(total / APPEARANCES_PAGE));
}

function whereOf({ kind, id }: Subject) {
  switch (kind) {
    case "food":
      return { foodId: id };
    case "product":
      return { productId: id };
    case "trick":
      return { tricks: { some: { trickId: id } } };
    case "theme":
      return { lunch: { episode: { themeId: id } } };
  }
}
