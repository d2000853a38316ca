import type { Day } from "#lib/calendar/index.ts";
import type { Db } from "#lib/db/index.ts";
import { readPastGround, type PastGround } from "./ground.ts";
import { guessReading } from "./guess-reading.ts";
import { foodNamer, type NamedPhrase } from "./name-foods.ts";
import type { PastInput, PastReading } from "./past.input.ts";
import { planPast, type PastPlan } from "./plan-past.ts";
import { readLines, type LineNote } from "./read-lines.ts";
import { readTable } from "./read-table.ts";
import { readStandingPast } from "./standing-past.ts";

/** A file laid beside the records: everything that a report or a writing needs. */
export type LaidPast = {
  readonly reading: PastReading;
  readonly header: readonly string[];
  readonly samples: readonly (readonly string[])[];
  readonly lineCount: number;
  readonly notes: readonly LineNote[];
  /** Phrases in order of appearance, with the lines they stand on. */
  readonly phrases: readonly { readonly named: NamedPhrase; readonly lines: readonly number[] }[];
  readonly plan: PastPlan;
  readonly ground: PastGround;
};

/** Reads a file and lays it beside what stands on record. Writes nothing. */
export async function layPast(db: Db, today: Day, input: PastInput): Promise<LaidPast> {
  const reading = input.reading ?? guessReading(input.text);
  const table = readTable(input.text, reading.delimiter);
  const ground = await readPastGround(db);
  const nameOf = foodNamer(ground.foods, input.choices);
  const content = table.rows.slice(reading.hasHeader ? 1 : 0);
  const common = {
    reading,
    header: table.rows[0]?.cells ?? [],
    samples: content.slice(0, 3).map(({ cells }) => cells),
    lineCount: content.length,
    ground,
  };
  const missing = (["date", "item"] as const).filter(
    (field) => reading.columns[field] === undefined,
  );
  if (missing.length > 0) {
    const notes = missing.map((field) => ({
      ...{ line: 1, kind: "error" as const },
      message: `Say which column holds the ${field}.`,
    }));
    return { ...common, notes, phrases: [], plan: { weeks: [], notes: [], known: 0 } };
  }
  const { lines, notes } = readLines(table, reading, ground, nameOf, today);
  const standing = await readStandingPast(
    db,
    lines.map(({ date }) => date),
  );
  const plan = planPast(lines, standing);
  const linesOf = new Map<string, number[]>();
  for (const { line, cells } of content) {
    const phrase = cells[reading.columns.item ?? 0]?.trim() ?? "";
    if (phrase === "") continue;
    const before = linesOf.get(phrase);
    if (before) before.push(line);
    else linesOf.set(phrase, [line]);
  }
  const phrases = [...linesOf].map(([phrase, on]) => ({ named: nameOf(phrase), lines: on }));
  return { ...common, notes, phrases, plan };
}
