import type { ThemeView } from "./load-themes.ts";
import type { FindThemesInput } from "./theme.input.ts";

/**
 * The themes that were asked for: each typed word stands in a theme's name, motifs, colours, season's
 * event or note. Those in use come first, and for a month those that only some of the year can take.
 */
export function findThemes(themes: readonly ThemeView[], asked: FindThemesInput): ThemeView[] {
  const words = asked.q.toLowerCase().split(/\s+/);
  const isSeasonFirst = asked.season === "next-month";
  return themes
    .filter((theme) => {
      const text = textOf(theme);
      return words.every((word) => text.includes(word));
    })
    .filter((theme) => !isSeasonFirst || theme.isInSeasonNextMonth)
    .filter((theme) => asked.used !== "never" || (theme.times === 0 && theme.plannedOn === null))
    .map((theme, place) => ({ theme, place, rank: rankOf(theme, isSeasonFirst) }))
    .sort((one, other) => one.rank - other.rank || one.place - other.place)
    .map(({ theme }) => theme);
}

function textOf({ name, motifs, palette, season, note }: ThemeView): string {
  const event = season.kind === "event" ? season.event : "";
  return [name, ...motifs, ...palette, event, note].join(" ").toLowerCase();
}

function rankOf({ isRetired, season }: ThemeView, isSeasonFirst: boolean): number {
  return (isRetired ? 2 : 0) + (isSeasonFirst && season.kind === "always" ? 1 : 0);
}
