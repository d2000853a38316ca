import { randomFrom } from "#lib/base/index.ts";
import { addDays, overlapsSeason, weeksLater, type Day } from "#lib/calendar/index.ts";
import type { DemoTheme } from "./sources.ts";

/** Themes of the weeks around today, when in season: last week, this one and the three to come. */
const NEAR: Readonly<Record<number, string>> = {
  [-1]: "letters-and-stamps",
  0: "night-train",
  1: "beekeepers-yard",
  2: "tide-pool",
  3: "paper-kites",
};
/** Weeks before a theme may come back, if there is any other. */
const REST_WEEKS = 40;

/** A theme for each Monday, in season, feasts on their days, none twice while another is left. */
export function themesFor(
  mondays: readonly Day[],
  thisMonday: Day,
  themes: readonly DemoTheme[],
  seed: string,
): Map<Day, DemoTheme> {
  const random = randomFrom(`${seed} themes`);
  const byId = new Map(themes.map((theme) => [theme.id, theme]));
  const near = new Map(
    Object.entries(NEAR).map(([weeks, id]) => [weeksLater(thisMonday, Number(weeks)), id]),
  );
  const lastOn = new Map<string, Day>();
  const chosen = new Map<Day, DemoTheme>();
  for (const monday of mondays) {
    const wished = byId.get(near.get(monday) ?? "");
    const fits = themes.filter(({ season }) => overlapsSeason(season, monday, addDays(monday, 4)));
    const rested = fits.filter(({ id }) => {
      const last = lastOn.get(id);
      const isKept = [...near].some(([later, nearId]) => nearId === id && later > monday);
      return !isKept && (!last || weeksLater(last, REST_WEEKS) <= monday);
    });
    const dated = rested.filter(({ season }) => season.kind === "date" || season.kind === "feast");
    const seasonal = rested.filter(({ season }) => season.kind === "months");
    const pool = [dated, random.next() < 0.65 ? seasonal : rested, rested, fits, themes];
    const theme =
      wished && fits.includes(wished)
        ? wished
        : random.pick(pool.find((themes) => themes.length > 0) ?? themes);
    chosen.set(monday, theme);
    lastOn.set(theme.id, monday);
  }
  return chosen;
}
