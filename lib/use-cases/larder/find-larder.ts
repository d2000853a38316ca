import { daysBetween } from "#lib/calendar/index.ts";
import { suggestFoods } from "#lib/catalog/index.ts";
import { readTricks } from "#lib/db/index.ts";
import type { Context } from "../context.ts";
import type { FindLarderInput, LARDER_VIEWS } from "./find-larder.input.ts";
import { readLarderTable, type LarderRow, type LarderTable } from "./larder-rows.ts";

/** Rows of one page of the table. */
const PAGE_ROWS = 20;
/** Foods a search brings up at most. */
const FOUND_MOST = 60;

type View = (typeof LARDER_VIEWS)[number];

/** One page of the table, and what stands around it. */
export type LarderView = {
  readonly rows: readonly LarderRow[];
  readonly total: number;
  readonly from: number;
  readonly page: number;
  readonly pages: number;
  readonly view: View;
  readonly children: LarderTable["children"];
  /** Foods behind each ready-made view and standing. */
  readonly counts: Readonly<Record<View | "resting" | "unmet", number>>;
  readonly foods: number;
  readonly products: number;
  readonly tricks: number;
  readonly motifs: readonly string[];
  /** Tricks whose names hold what was typed. */
  readonly foundTricks: readonly { readonly id: string; readonly name: string }[];
};

/** The foods that a search and filters leave, a page at a time. A search looks through all of them. */
export async function findLarder(context: Context, asked: FindLarderInput): Promise<LarderView> {
  const [table, tricks] = await Promise.all([readLarderTable(context), readTricks(context.db)]);
  const isNarrowed =
    asked.q !== "" ||
    asked.motif !== "" ||
    [asked.group, asked.colour, asked.standing, asked.unseen].some((value) => value !== undefined);
  const view = asked.show ?? (isNarrowed || !table.rows.some(isInUse) ? "all" : "in-use");
  const kept = searched(table, asked.q)
    .filter((row) => isInView(row, view))
    .filter((row) => isAsked(row, asked, context));
  const pages = Math.max(1, Math.ceil(kept.length / PAGE_ROWS));
  const page = Math.min(asked.page, pages);
  const from = (page - 1) * PAGE_ROWS;
  const current = table.rows.filter((row) => !row.isRetired);
  const words = asked.q.toLowerCase();
  return {
    rows: kept.slice(from, from + PAGE_ROWS),
    ...{ total: kept.length, from, page, pages, view, children: table.children },
    counts: countsOf(table.rows),
    ...{ foods: current.length, products: table.products.length, tricks: tricks.length },
    motifs: [...new Set(current.flatMap(({ motifs }) => motifs))].sort(),
    foundTricks:
      words === "" ? [] : tricks.filter(({ name }) => name.toLowerCase().includes(words)),
  };
}

function isInUse(row: LarderRow): boolean {
  return row.isInUse && !row.isRetired;
}

function isInView(row: LarderRow, view: View): boolean {
  if (view === "retired") return row.isRetired;
  if (row.isRetired) return false;
  switch (view) {
    case "all":
      return true;
    case "in-use":
      return row.isInUse;
    case "soon":
      return row.isSoon;
    case "season":
      return row.isSeasonal;
  }
}

function isAsked(
  row: LarderRow,
  { group, colour, motif, child, standing, unseen }: FindLarderInput,
  { today }: Context,
): boolean {
  if (group !== undefined && row.group !== group) return false;
  if (colour !== undefined && !row.colours.includes(colour)) return false;
  if (motif !== "" && !row.motifs.includes(motif)) return false;
  if (standing !== undefined && !hasStanding(row, standing, child)) return false;
  if (unseen === undefined || row.lastOn === null) return true;
  return daysBetween(row.lastOn, today) >= unseen * 7;
}

function hasStanding(row: LarderRow, standing: string, childId: string): boolean {
  const views = row.standings.filter((one) => childId === "" || one.childId === childId);
  return views.some(({ kind }) => kind === standing);
}

/** By any name of a food, by a product or by a shop, likeliest first; everything when nothing is typed. */
function searched(table: LarderTable, typed: string): readonly LarderRow[] {
  if (typed === "") return table.rows;
  const words = typed.toLowerCase().split(/\s+/);
  const named = suggestFoods(typed, table.foods, FOUND_MOST).map(({ id }) => id as string);
  const sold = table.products
    .filter(({ name, flavour, shops }) => {
      const text = `${name} ${flavour} ${shops.join(" ")}`.toLowerCase();
      return words.every((word) => text.includes(word));
    })
    .map(({ foodId }) => foodId);
  const byId = new Map(table.rows.map((row) => [row.id, row]));
  return [...new Set([...named, ...sold])].flatMap((id) => byId.get(id) ?? []);
}

function countsOf(rows: readonly LarderRow[]): LarderView["counts"] {
  const count = (keep: (row: LarderRow) => boolean): number => rows.filter(keep).length;
  const current = (keep: (row: LarderRow) => boolean): number =>
    count((row) => !row.isRetired && keep(row));
  return {
    all: current(() => true),
    "in-use": current((row) => row.isInUse),
    soon: current((row) => row.isSoon),
    season: current((row) => row.isSeasonal),
    resting: current((row) => hasStanding(row, "resting", "")),
    unmet: current((row) => hasStanding(row, "unmet", "")),
    retired: count((row) => row.isRetired),
  };
}
