import { groupBy } from "#lib/base/index.ts";
import { dayFrom, type Day } from "#lib/calendar/index.ts";
import type { Db } from "#lib/db/index.ts";
import type { Names } from "./read-names.ts";
import { readShownWeeks } from "./shown-weeks.ts";

/** How often something was on within a span, and when it was last seen at all. */
export type UsedLine = {
  readonly id: string;
  readonly name: string;
  readonly times: number;
  readonly lastOn: Day;
};

export type Used = {
  /** Most often on first. */
  readonly themes: readonly UsedLine[];
  readonly foods: readonly UsedLine[];
};

const EVER = dayFrom(1970, 1, 1);

/** Themes by week and foods by lunch, on from a day to today. Staples count too: they were eaten. */
export async function loadUsed(
  db: Db,
  { from, today, names }: { readonly from: Day | null; readonly today: Day; readonly names: Names },
): Promise<Used> {
  const weeks = await readShownWeeks(db, from ?? EVER, today);
  const themes = weeks.flatMap(({ themeId, week }) =>
    themeId === null ? [] : [{ id: themeId, on: week }],
  );
  const foods = weeks.flatMap(({ items }) => items.map(({ foodId, on }) => ({ id: foodId, on })));
  return { themes: tally(themes, names.theme), foods: tally(foods, names.food) };
}

function tally(
  shown: readonly { readonly id: string; readonly on: Day }[],
  nameOf: (id: string) => string,
): UsedLine[] {
  return [...groupBy(shown, ({ id }) => id)]
    .map(([id, own]) => {
      const days = [...new Set(own.map(({ on }) => on))];
      const lastOn = days.reduce((latest, on) => (on > latest ? on : latest));
      return { id, name: nameOf(id), times: days.length, lastOn };
    })
    .sort((one, other) => other.times - one.times || (one.name < other.name ? -1 : 1));
}
