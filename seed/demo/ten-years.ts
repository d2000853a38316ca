import { addDays, mondayOf, weeksLater } from "#lib/calendar/index.ts";
import angles from "./data/angles.json" with { type: "json" };
import { castOf, extraChildren } from "./cast.ts";
import { composeTray } from "./compose.ts";
import { eat, packItems } from "./pack.ts";
import type { DemoChild, DemoEpisode } from "./records.ts";
import type { DemoSources } from "./sources.ts";
import { openStudio, type Rows } from "./studio.ts";
import { themesFor } from "./theme-weeks.ts";

/** A long series for the bench: rows only, no breaks, no scrapped items, no quotes. */
export type LongSeries = Rows & {
  readonly children: readonly DemoChild[];
  readonly episodes: readonly DemoEpisode[];
};

const ANGLES: Readonly<Record<string, readonly string[]>> = angles;

/**
 * As many weeks as asked for, ending with last week, for as many children: ten years of three
 * children make some 18,000 items and 54,000 reactions.
 */
export function tenYears(
  sources: DemoSources,
  size: { readonly children: number; readonly weeks: number } = { children: 3, weeks: 520 },
): LongSeries {
  const { today, themes } = sources;
  const children = [...castOf(today), ...extraChildren(size.children - 2)].slice(0, size.children);
  const thisMonday = mondayOf(today);
  const start = weeksLater(thisMonday, -size.weeks);
  const seed = `long ${size.weeks} ${size.children}`;
  const studio = openStudio(sources, children, { seed, start, quotes: false });
  const mondays = Array.from({ length: size.weeks }, (_, week) => weeksLater(start, week));
  const themeOf = themesFor(mondays, thisMonday, themes, seed);
  const episodes: DemoEpisode[] = [];
  mondays.forEach((weekOf, week) => {
    const theme = themeOf.get(weekOf);
    if (!theme) return;
    const episode = bareEpisode(week + 1, weekOf, theme.id);
    episodes.push(episode);
    for (let weekday = 0; weekday < 5; weekday += 1) {
      const on = addDays(weekOf, weekday);
      const order = { on, week, motifs: theme.motifs, random: studio.random, isPlenty: true };
      const tray = composeTray(studio.shelf, studio.memory, order);
      const lunchId = `lunch-${on}`;
      const told = tray.map((favourite) => ({ favourite, fate: "packed" as const }));
      const packed = packItems(studio, lunchId, on, told, theme.motifs);
      studio.rows.lunches.push({
        ...{
          id: lunchId,
          episodeId: episode.id,
          date: on,
          angle: ANGLES[theme.id]?.[weekday] ?? "",
        },
        ...{ minutesUsed: 20, ambientC: null, ambientNote: "", hard: "", pickups: "" },
        packedAt: `${on}T06:30:00.000Z`,
      });
      eat(studio, on, packed);
    }
  });
  return { ...studio.rows, children, episodes };
}

function bareEpisode(number: number, weekOf: DemoEpisode["weekOf"], themeId: string): DemoEpisode {
  return {
    ...{ id: `episode-${number}`, number, weekOf, themeId, workingTitle: "", notes: "" },
    lockedAt: `${addDays(weekOf, -1)}T18:30:00.000Z`,
    publishedAt: `${addDays(weekOf, 11)}T16:00:00.000Z`,
    ...{ publishedOn: addDays(weekOf, 11), url: "", surprise: "", surpriseRevealOn: null },
    runtimeSeconds: null,
  };
}
