import type { MatchReason } from "#lib/catalog/index.ts";
import type { LaidPast } from "./lay-past.ts";
import type { NamedPhrase } from "./name-foods.ts";
import { LEAVE_OUT, NEW_FOOD, type PastReading } from "./past.input.ts";
import type { LineNote } from "./read-lines.ts";

/** What a dry run tells, ready to be sent to a page. */
export type PastReport = {
  readonly reading: PastReading;
  readonly header: readonly string[];
  readonly samples: readonly (readonly string[])[];
  readonly lineCount: number;
  readonly errors: number;
  readonly doubts: number;
  readonly notes: readonly LineNote[];
  readonly matches: readonly PastMatch[];
  /** What would be added. */
  readonly added: {
    readonly weeks: number;
    readonly lunches: number;
    readonly items: number;
    readonly verdicts: number;
    readonly themes: readonly string[];
    readonly shops: readonly string[];
    readonly foods: readonly string[];
  };
  /** Lines that say what stands on record already. */
  readonly known: number;
};

/** A phrase of the file and the food it is taken for. */
export type PastMatch = {
  readonly phrase: string;
  /** A food's id, NEW_FOOD, LEAVE_OUT, or empty while nobody said. */
  readonly choice: string;
  readonly why: string;
  readonly options: readonly { readonly id: string; readonly name: string }[];
  readonly lines: readonly number[];
};

/** The report of a file laid beside the records. */
export function reportPast(laid: LaidPast): PastReport {
  const { reading, header, samples, lineCount, plan, ground } = laid;
  const notes = [...laid.notes, ...plan.notes].sort((one, other) => one.line - other.line);
  const errors = notes.filter(({ kind }) => kind === "error").length;
  const lunches = plan.weeks.flatMap((week) => week.lunches);
  const items = lunches.flatMap((lunch) => lunch.items);
  const fresh = items.filter((item) => item.standingId === null);
  return {
    ...{ reading, header, samples, lineCount, errors, doubts: notes.length - errors, notes },
    matches: laid.phrases.map(({ named, lines }) => ({ ...matchOf(named), lines })),
    added: {
      weeks: plan.weeks.filter((week) => week.standingId === null).length,
      lunches: lunches.filter((lunch) => lunch.standingId === null).length,
      items: fresh.length,
      verdicts: items.reduce((sum, item) => sum + item.verdicts.length, 0),
      themes: unknown(
        plan.weeks.map((week) => week.theme ?? ""),
        ground.themes,
      ),
      shops: unknown(
        fresh.map((item) => item.line.shop),
        ground.shops,
      ),
      foods: unknown(
        fresh.map(({ line: { food } }) => ("id" in food ? "" : food.newName)),
        [],
      ),
    },
    known: plan.known,
  };
}

function matchOf({ phrase, named, others }: NamedPhrase): Omit<PastMatch, "lines"> {
  const options = others.map(({ id, name }) => ({ id: String(id), name }));
  switch (named.kind) {
    case "food": {
      const { id, name } = named.food;
      const why = named.by === "chosen" ? "as you chose" : describeReason(named.by);
      return { phrase, choice: id, why, options: [{ id, name }, ...options] };
    }
    case "new":
      return { phrase, choice: NEW_FOOD, why: "as you chose", options };
    case "left-out":
      return { phrase, choice: LEAVE_OUT, why: "as you chose", options };
    case "unknown":
      return { phrase, choice: "", why: "nothing is sure enough", options };
  }
}

function describeReason(reason: MatchReason): string {
  switch (reason.kind) {
    case "name":
      return "its name";
    case "alias":
      return `also called ${reason.alias}`;
    case "words":
      return `by the words of “${reason.matched}”`;
    case "spelling":
      return `by a spelling near “${reason.matched}”`;
  }
}

/** The names, each once, that none of the rows on record has. */
function unknown(names: readonly string[], rows: readonly { readonly name: string }[]): string[] {
  const known = new Set(rows.map(({ name }) => name.toLowerCase()));
  const added = new Map<string, string>();
  for (const name of names) {
    const key = name.toLowerCase();
    if (name !== "" && !known.has(key) && !added.has(key)) added.set(key, name);
  }
  return [...added.values()];
}
