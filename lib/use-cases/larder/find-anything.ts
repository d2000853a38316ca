import { daysAgo, mediumDay, partsOf, type Day } from "#lib/calendar/index.ts";
import { suggestFoods, type Food } from "#lib/catalog/index.ts";
import { keepUntilWritten, readSeen, type Seen, type SeenLevel } from "#lib/db/index.ts";
import type { Context } from "../context.ts";
import { readNamedFoods } from "./named-foods.ts";

const FOODS_FOUND = 4;
const OTHERS_FOUND = 3;

/** Something that was asked after, and whether it has ever been on. */
export type Hit = {
  readonly kind: SeenLevel;
  readonly id: string;
  readonly name: string;
  readonly times: number;
  readonly last: Day | null;
  /** "41 times, last on Tue 3 March 2026, 8 days ago" */
  readonly words: string;
};

type Named = { readonly id: string; readonly name: string; readonly text: string };

/** What a search looks through; kept until something is written. */
type FindIndex = {
  readonly foods: readonly Food[];
  readonly named: Readonly<Record<Exclude<SeenLevel, "food">, readonly Named[]>>;
  readonly seen: Readonly<Record<SeenLevel, ReadonlyMap<string, Seen>>>;
};

/**
 * Answers "has it ever been on?" for what has been typed so far: foods by any name, then products,
 * tricks and themes with a word that begins so. Nothing is asked of the file but whether it changed.
 */
export async function findAnything(context: Context, typed: string): Promise<Hit[]> {
  if (typed.trim() === "") return [];
  const index = await readIndex(context);
  const starts = wordsOf(typed);
  const hit = (kind: SeenLevel, { id, name }: { id: string; name: string }): Hit => {
    const seen = index.seen[kind].get(id);
    const words = seenWords(seen, kind, context.today);
    return { kind, id, name, times: seen?.times ?? 0, last: seen?.last ?? null, words };
  };
  const others = (["product", "trick", "theme"] as const).flatMap((kind) =>
    index.named[kind]
      .filter(
        ({ text }) => starts.length > 0 && starts.every((start) => text.includes(` ${start}`)),
      )
      .slice(0, OTHERS_FOUND)
      .map((one) => hit(kind, one)),
  );
  const foods = suggestFoods(typed, index.foods, FOODS_FOUND).map((food) => hit("food", food));
  // What was typed in full goes first, whatever it is.
  const isExact = ({ name }: Hit): boolean => name.toLowerCase() === typed.trim().toLowerCase();
  const all = [...foods, ...others];
  return [...all.filter(isExact), ...all.filter((one) => !isExact(one))];
}

function readIndex({ db, today }: Context): Promise<FindIndex> {
  return keepUntilWritten(db, `find ${today}`, async () => {
    const [foods, products, tricks, themes, food, product, trick, theme] = await Promise.all([
      readNamedFoods(db),
      db.product.findMany({ select: { id: true, name: true, flavour: true } }),
      db.trick.findMany({ select: { id: true, name: true } }),
      db.theme.findMany({ select: { id: true, name: true } }),
      readSeen(db, "food", today),
      readSeen(db, "product", today),
      readSeen(db, "trick", today),
      readSeen(db, "theme", today),
    ]);
    const seen = { food, product, trick, theme };
    const named = {
      product: sorted(products, product, ({ flavour }) => flavour),
      trick: sorted(tricks, trick),
      theme: sorted(themes, theme),
    };
    return { foods, named, seen };
  });
}

/** Ready to be searched, those most often on first. */
function sorted<Row extends { readonly id: string; readonly name: string }>(
  rows: readonly Row[],
  seen: ReadonlyMap<string, Seen>,
  more: (row: Row) => string = () => "",
): Named[] {
  const times = ({ id }: Row): number => seen.get(id)?.times ?? 0;
  return [...rows]
    .sort((left, right) => times(right) - times(left) || left.name.localeCompare(right.name, "en"))
    .map((row) => ({
      id: row.id,
      name: row.name,
      text: ` ${wordsOf(`${row.name} ${more(row)}`).join(" ")}`,
    }));
}

function wordsOf(text: string): string[] {
  return text.toLowerCase().match(/[\p{L}\d]+/gu) ?? [];
}

function seenWords(seen: Seen | undefined, kind: SeenLevel, today: Day): string {
  const long = (date: Day): string => `${mediumDay(date)} ${partsOf(date)[0]}`;
  const on = kind === "theme" ? "in the week of" : "on";
  const planned = seen?.next == null ? "" : `; planned ${on} ${long(seen.next)}`;
  if (seen?.last == null) return `never yet${planned}`;
  const times = seen.times === 1 ? "once" : `${seen.times} times, last`;
  return `${times} ${on} ${long(seen.last)}, ${daysAgo(seen.last, today)}${planned}`;
}
