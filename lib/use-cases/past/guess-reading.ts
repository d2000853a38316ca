import { PAST_FIELDS, type PastField, type PastReading } from "./past.input.ts";
import { guessDateStyle } from "./read-cells.ts";
import { guessDelimiter, readTable } from "./read-table.ts";

const HEADER_WORDS: Readonly<Record<PastField, readonly string[]>> = {
  date: ["date", "day", "on", "when"],
  theme: ["theme", "week theme", "episode", "title", "week"],
  item: ["item", "food", "what", "dish", "lunch item", "contents"],
  amount: ["amount", "quantity", "qty", "how much", "portion"],
  unit: ["unit", "units", "measure"],
  part: ["part", "place", "category", "group", "kind"],
  trick: ["trick", "tricks", "shape", "cut", "presentation"],
  shop: ["shop", "store", "from", "bought at", "where"],
  child: ["child", "kid", "name", "who", "eater"],
  eaten: ["eaten", "ate", "share eaten", "how much eaten", "finished"],
  face: ["face", "liking", "score", "rating"],
  quote: ["quote", "said", "words", "comment", "verdict"],
};

/** How a file is most likely read: its delimiter, its columns by their names, its dates by trying. */
export function guessReading(text: string): PastReading {
  const delimiter = guessDelimiter(text);
  const { rows } = readTable(text, delimiter);
  const header = rows[0]?.cells ?? [];
  const columns: PastReading["columns"] = {};
  const taken = new Set<number>();
  for (const field of PAST_FIELDS) {
    const index = header.findIndex(
      (cell, at) => !taken.has(at) && HEADER_WORDS[field].includes(plain(cell)),
    );
    if (index < 0) continue;
    columns[field] = index;
    taken.add(index);
  }
  const hasHeader = taken.size > 0;
  const dates = datesOf(rows.slice(hasHeader ? 1 : 0), columns.date);
  return { delimiter, dates: guessDateStyle(dates).style, hasHeader, columns };
}

/** The filled date cells of a file. */
export function datesOf(
  rows: readonly { readonly cells: readonly string[] }[],
  column: number | undefined,
): string[] {
  if (column === undefined) return [];
  return rows.flatMap(({ cells }) => {
    const cell = cells[column]?.trim() ?? "";
    return cell === "" ? [] : [cell];
  });
}

function plain(cell: string): string {
  return cell.trim().toLowerCase().replaceAll(/[_-]+/g, " ");
}
