import type { Day } from "#lib/calendar/index.ts";
import { likelyPart, measureOf, readQuantity, type Food, type Part } from "#lib/catalog/index.ts";
import type { Eaten } from "#lib/reactions/index.ts";
import type { PastGround } from "./ground.ts";
import { datesOf } from "./guess-reading.ts";
import { bareName, type NamedPhrase } from "./name-foods.ts";
import type { PastField, PastReading } from "./past.input.ts";
import {
  countsQuarters,
  guessDateStyle,
  readDay,
  readEaten,
  readNumber,
  readPart,
} from "./read-cells.ts";
import type { Table, TableRow } from "./read-table.ts";

/** Something about a line: an error keeps the file out, a doubt does not. */
export type LineNote = {
  readonly line: number;
  readonly kind: "error" | "doubt";
  readonly message: string;
};

/** A line that could be read. */
export type PastLine = {
  readonly line: number;
  readonly date: Day;
  readonly theme: string;
  /** The food, or the name of one to be added. */
  readonly food: Food | { readonly newName: string };
  readonly amount: number;
  readonly unit: string;
  readonly part: Part;
  readonly trickIds: readonly string[];
  readonly shop: string;
  readonly childId: string | null;
  readonly eaten: Eaten | null;
  readonly face: number | null;
  readonly quote: string;
};

/** What a food of the file's own weighs when nothing is said (common practice, no source). */
const NEW_FOOD_GRAMS = 50;
const QUOTE_MAX = 500;

/** Reads every line of a table; what cannot be read is noted by its line. */
export function readLines(
  table: Table,
  reading: PastReading,
  ground: PastGround,
  nameOf: (phrase: string) => NamedPhrase,
  today: Day,
): { readonly lines: PastLine[]; readonly notes: LineNote[] } {
  const notes: LineNote[] = table.broken.map((one) => ({ ...one, kind: "error" }));
  const rows = table.rows.slice(reading.hasHeader ? 1 : 0);
  const column = (field: PastField): string[] => rows.map((row) => cellOf(row, reading, field));
  const dates = datesOf(rows, reading.columns.date);
  if (reading.dates !== "ymd" && !guessDateStyle(dates).isSure) {
    const first = reading.dates === "dmy" ? "day" : "month";
    const message = `Dates are read with the ${first} first; nothing in the file tells day and month apart.`;
    notes.push({ line: rows[0]?.line ?? 1, kind: "doubt", message });
  }
  const inQuarters = countsQuarters(column("eaten"));
  const width = table.rows[0]?.cells.length ?? 0;
  const lines = rows.flatMap((row) => {
    const wrong: string[] = [];
    const doubts: string[] = [];
    const cell = (field: PastField): string => cellOf(row, reading, field);
    if (row.cells.slice(width).some((one) => one.trim() !== "")) {
      wrong.push(
        `This line has ${row.cells.length} cells, the first has ${width}. A cell that holds the delimiter belongs in quotation marks.`,
      );
    }
    const line = readLine(row, cell, { ground, nameOf, today, reading, inQuarters, wrong, doubts });
    for (const message of wrong) notes.push({ line: row.line, kind: "error", message });
    for (const message of doubts) notes.push({ line: row.line, kind: "doubt", message });
    return line && wrong.length === 0 ? [line] : [];
  });
  return { lines, notes: notes.sort((one, other) => one.line - other.line) };
}

type Reader = {
  readonly ground: PastGround;
  readonly nameOf: (phrase: string) => NamedPhrase;
  readonly today: Day;
  readonly reading: PastReading;
  readonly inQuarters: boolean;
  readonly wrong: string[];
  readonly doubts: string[];
};

function readLine(
  row: TableRow,
  cell: (field: PastField) => string,
  reader: Reader,
): PastLine | undefined {
  const { reading, wrong, ground } = reader;
  const date = readDay(cell("date"), reading.dates);
  if (!date) wrong.push(`“${cell("date")}” is not a date of this file's kind.`);
  else if (date > reader.today)
    wrong.push("This day is still to come; only what happened can be brought.");
  const named = nameFood(cell("item"), reader);
  if (named === undefined || !date) return undefined;
  const food = named === "new" ? undefined : named;
  const part = readPartOf(cell("part"), food, reader);
  const trickIds = readTricks(cell("trick"), ground, wrong);
  const child = readChild(cell, reader);
  return {
    line: row.line,
    date,
    theme: cell("theme"),
    food: food ?? { newName: bareName(cell("item")) },
    ...readAmount(cell, food, reader),
    ...{ part, trickIds, shop: cell("shop"), childId: child },
    ...readVerdict(cell, child, reader),
  };
}

/** Undefined when the line is left out or its food is not known. */
function nameFood(phrase: string, { nameOf, wrong, doubts }: Reader): Food | "new" | undefined {
  if (phrase === "") {
    wrong.push("No item is named.");
    return undefined;
  }
  const { named, others } = nameOf(phrase);
  switch (named.kind) {
    case "food":
      if (named.by !== "chosen" && named.by.kind === "spelling") {
        doubts.push(`“${phrase}” is read as ${named.food.name}, for want of that spelling.`);
      }
      return named.food;
    case "new":
      return "new";
    case "left-out":
      return undefined;
    case "unknown": {
      const near = others.map((food) => food.name).join(", ");
      wrong.push(
        near === ""
          ? `No food of the Larder is “${phrase}”. Choose one, or add it as a food of your own.`
          : `“${phrase}” may be ${near}. Choose which.`,
      );
      return undefined;
    }
  }
}

function readPartOf(cell: string, food: Food | undefined, { wrong }: Reader): Part {
  const part = cell === "" ? food && likelyPart(food) : readPart(cell);
  if (cell !== "" && !part) wrong.push(`“${cell}” is no part of a lunch.`);
  return part ?? "extra";
}

function readAmount(
  cell: (field: PastField) => string,
  food: Food | undefined,
  { wrong }: Reader,
): { readonly amount: number; readonly unit: string } {
  const serving = { amount: Math.round(food?.servingGrams ?? NEW_FOOD_GRAMS), unit: "g" };
  const [text, unit] = [cell("amount"), cell("unit")];
  if (unit !== "") {
    const amount = readNumber(text) ?? readQuantity(text).quantity?.amount;
    if (amount === undefined || amount <= 0) wrong.push(`“${text}” is not an amount.`);
    return { amount: amount ?? serving.amount, unit: measureOf(unit)?.name ?? unit.slice(0, 40) };
  }
  const { quantity } = readQuantity(text === "" ? cell("item") : text);
  if (text !== "" && !quantity) wrong.push(`“${text}” is not an amount.`);
  return quantity ? { amount: quantity.amount, unit: quantity.unit } : serving;
}

function readTricks(cell: string, { tricks }: PastGround, wrong: string[]): string[] {
  const names = cell.split(";").map((name) => name.trim());
  return names.filter(Boolean).flatMap((name) => {
    const trick = tricks.find((one) => sameName(one.name, name));
    if (!trick) wrong.push(`No trick of the Larder is called “${name}”.`);
    return trick ? [trick.id] : [];
  });
}

function readChild(cell: (field: PastField) => string, { ground, wrong }: Reader): string | null {
  const name = cell("child");
  const hasVerdict = ["eaten", "face", "quote"].some((field) => cell(field as PastField) !== "");
  if (name === "") {
    if (!hasVerdict) return null;
    if (ground.children.length === 1) return ground.children[0]?.id ?? null;
    wrong.push("Somebody ate or said something here, but no child is named.");
    return null;
  }
  const child = ground.children.find((one) => one.names.some((own) => sameName(own, name)));
  if (!child) wrong.push(`No child of the series bible is called “${name}”. Add the child first.`);
  return child?.id ?? null;
}

function readVerdict(
  cell: (field: PastField) => string,
  childId: string | null,
  { inQuarters, wrong, doubts }: Reader,
): Pick<PastLine, "eaten" | "face" | "quote"> {
  const [eatenText, faceText, quote] = [cell("eaten"), cell("face"), cell("quote")];
  const eaten = eatenText === "" ? undefined : readEaten(eatenText, inQuarters);
  if (eatenText !== "" && !eaten) wrong.push(`“${eatenText}” does not say how much was eaten.`);
  if (eaten?.isRounded) doubts.push(`“${eatenText}” is rounded to the nearest quarter.`);
  const face = faceText === "" ? undefined : readNumber(faceText);
  if (faceText !== "" && !(face !== undefined && face <= 100)) {
    wrong.push(`“${faceText}” is no face from 0 to 100.`);
  }
  if (quote.length > QUOTE_MAX) wrong.push(`The quote is longer than ${QUOTE_MAX} letters.`);
  if (childId === null) return { eaten: null, face: null, quote: "" };
  return { eaten: eaten?.eaten ?? null, face: face ?? null, quote };
}

function sameName(one: string, other: string): boolean {
  return one.trim().toLowerCase() === other.trim().toLowerCase();
}

/** A cell without the spaces around it; a quote keeps its own. */
function cellOf(row: TableRow, reading: PastReading, field: PastField): string {
  const column = reading.columns[field];
  const cell = column === undefined ? "" : (row.cells[column] ?? "");
  return field === "quote" && cell.trim() !== "" ? cell : cell.trim();
}
