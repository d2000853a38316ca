import { groupBy } from "#lib/base/index.ts";
import { mondayOf, type Day } from "#lib/calendar/index.ts";
import type { LineNote, PastLine } from "./read-lines.ts";
import { itemKey, verdictKey, type StandingPast } from "./standing-past.ts";

/** An item that a file speaks of, once however many children judged it. */
export type PlannedItem = {
  readonly line: PastLine;
  /** On record already, or null. */
  readonly standingId: string | null;
  readonly verdicts: readonly PastLine[];
};
export type PlannedLunch = {
  readonly date: Day;
  readonly standingId: string | null;
  /** Items on record already: new ones come after them. */
  readonly itemCount: number;
  readonly items: readonly PlannedItem[];
};
type PlannedWeek = {
  readonly monday: Day;
  readonly standingId: string | null;
  /** The theme to set, or null when none is said or it stands already. */
  readonly theme: string | null;
  readonly lunches: readonly PlannedLunch[];
};

/** What a file would change, week by week, and what speaks against it. */
export type PastPlan = {
  readonly weeks: readonly PlannedWeek[];
  readonly notes: readonly LineNote[];
  /** Lines that say what stands on record already. */
  readonly known: number;
};

/** Lays the lines of a file beside what stands on record. Writes nothing. */
export function planPast(lines: readonly PastLine[], standing: StandingPast): PastPlan {
  const notes: LineNote[] = [];
  const said: Said = { notes, known: 0 };
  const weeks = [...groupBy(lines, (line) => mondayOf(line.date))].map(([monday, ofWeek]) => {
    const episode = standing.episodes.get(monday);
    const lunches = [...groupBy(ofWeek, (line) => line.date)].map(([date, ofDay]) =>
      planLunch(date, ofDay, standing, said),
    );
    const theme = planTheme(ofWeek, episode?.theme ?? null, notes);
    return { monday, standingId: episode?.id ?? null, theme, lunches };
  });
  return { weeks, notes, known: said.known };
}

type Said = { readonly notes: LineNote[]; known: number };

function planTheme(
  lines: readonly PastLine[],
  standing: string | null,
  notes: LineNote[],
): string | null {
  let theme = standing;
  let from: number | undefined;
  for (const line of lines) {
    if (line.theme === "") continue;
    if (theme === null) [theme, from] = [line.theme, line.line];
    else if (theme.toLowerCase() !== line.theme.toLowerCase()) {
      const where = from === undefined ? "on record" : `said on line ${from}`;
      const message = `This week's theme is ${theme}, ${where}; a week has one theme.`;
      notes.push({ line: line.line, kind: "error", message });
    }
  }
  return standing === null ? theme : null;
}

function planLunch(
  date: Day,
  lines: readonly PastLine[],
  standing: StandingPast,
  said: Said,
): PlannedLunch {
  const lunch = standing.lunches.get(date);
  const [first] = lines;
  if (lunch && !lunch.isPacked && lunch.itemCount > 0 && first) {
    const message =
      "A lunch is planned for this day and its lid was never shut. Shut it on the call sheet, or take it off the slate.";
    said.notes.push({ line: first.line, kind: "error", message });
  }
  const items = [...groupBy(lines, keyOf)].map(([key, ofItem]) => {
    const item = lunch?.items.get(key);
    return planItem(ofItem, item, said);
  });
  if (lunch?.isPacked && first && items.some((item) => item.standingId === null)) {
    const message = "A lunch of this day is on record already; what it lacks is added to it.";
    said.notes.push({ line: first.line, kind: "doubt", message });
  }
  return { date, standingId: lunch?.id ?? null, itemCount: lunch?.itemCount ?? 0, items };
}

function keyOf(line: PastLine): string {
  const id = "id" in line.food ? line.food.id : `+${line.food.newName.toLowerCase()}`;
  return itemKey(id, line.part, line.amount, line.unit);
}

function planItem(
  lines: readonly PastLine[],
  item: { readonly id: string; readonly verdicts: ReadonlyMap<string, string> } | undefined,
  said: Said,
): PlannedItem {
  const [line] = lines as [PastLine, ...PastLine[]];
  const verdicts = new Map<string, PastLine>();
  let isNamed = item !== undefined;
  for (const one of lines) {
    const told = (kind: LineNote["kind"], message: string): void => {
      said.notes.push({ line: one.line, kind, message });
    };
    if (
      one !== line &&
      (one.shop !== line.shop || String(one.trickIds) !== String(line.trickIds))
    ) {
      told("error", `Line ${line.line} speaks of the same item with another shop or trick.`);
    }
    if (one.childId === null || !saysSomething(one)) {
      if (isNamed && item !== undefined) said.known += 1;
      else if (isNamed) told("doubt", `Line ${line.line} says the same; it counts once.`);
      isNamed = true;
      continue;
    }
    isNamed = true;
    const stands = item?.verdicts.get(one.childId);
    const before = verdicts.get(one.childId);
    if (stands === verdictKey(one)) said.known += 1;
    else if (stands !== undefined) told("error", "Another verdict on this item stands on record.");
    else if (before === undefined) verdicts.set(one.childId, one);
    else if (verdictKey(before) === verdictKey(one)) {
      told("doubt", `Line ${before.line} says the same; it counts once.`);
    } else told("error", `Line ${before.line} says otherwise for the same child and item.`);
  }
  return { line, standingId: item?.id ?? null, verdicts: [...verdicts.values()] };
}

function saysSomething(line: PastLine): boolean {
  return line.eaten !== null || line.face !== null || line.quote !== "";
}
