import type { Random } from "#lib/base/index.ts";
import { addDays, type Day } from "#lib/calendar/index.ts";
import type { DemoEpisode, DemoScreenTime } from "./records.ts";
import type { DemoTheme } from "./sources.ts";

const TITLES = [
  "THEME in five tins",
  "THEME, Monday to Friday",
  "A week of THEME",
  "THEME: five lunches, one surprise",
  "We packed THEME",
];
const SURPRISES = [
  "a folded paper boat with a riddle inside",
  "the lid painted with the lighthouse",
  "a postcard from the relief boat",
  "a tin whistle wrapped in a napkin",
  "a map that only makes sense with Thursday’s lunch",
  "a second, very small tin inside the tin",
  "a brass button from the keeper’s coat",
  "a shell with a number in it",
  "a paper moustache each",
  "a lantern made of an orange skin",
  "the kitchen timer, set to go off at noon",
  "a medal on a ribbon",
  "a note in mirror writing",
  "one dried starfish, on loan from the museum",
];
const NOTES = [
  "Museum closed on Wednesday, so Wednesday was filmed upstairs.",
  "New tripod foot. It wobbles less.",
  "Both tins came home with the other child’s lid.",
  "Lamp room borrowed for the last shot.",
  "Sound from Tuesday is mostly gull.",
];

/** Where a week stands seen from today, in whole weeks: −1 last week, 0 this one. */
export type WeekOffset = number;

/** The episode of a week: locked up to next week, published from the week before last back. */
export function tellEpisode(
  number: number,
  weekOf: Day,
  theme: DemoTheme,
  offset: WeekOffset,
  today: Day,
  random: Random,
): DemoEpisode {
  const publishedOn = addDays(weekOf, 11);
  const isPublished = publishedOn < today;
  const hasSurprise = offset === 0 || random.next() < 0.6;
  const title = random.pick(TITLES).replace("THEME", theme.name);
  const surprise = random.pick(SURPRISES);
  const notes = random.next() < 0.15 && offset < 0 ? random.pick(NOTES) : "";
  return {
    ...{ id: `episode-${number}`, number, weekOf, themeId: theme.id, notes },
    workingTitle: offset <= 1 ? title : "",
    lockedAt: offset <= 1 ? `${addDays(weekOf, offset === 1 ? -8 : -1)}T18:30:00.000Z` : null,
    publishedAt: isPublished ? `${publishedOn}T16:00:00.000Z` : null,
    publishedOn: isPublished ? publishedOn : null,
    url: isPublished ? `https://video.example/tin-harbour/${number}` : "",
    surprise: hasSurprise && offset <= 1 ? surprise : "",
    surpriseRevealOn: hasSurprise && offset <= 1 ? addDays(weekOf, 4) : null,
    runtimeSeconds: isPublished ? 440 + random.below(300) : null,
  };
}

/** Seconds each child is seen or heard in a finished episode. */
export function tellScreenTime(
  { id, runtimeSeconds }: DemoEpisode,
  childIds: readonly string[],
  random: Random,
): DemoScreenTime[] {
  if (runtimeSeconds === null) return [];
  return childIds.map((childId) => ({
    ...{ episodeId: id, childId },
    seconds: Math.round(runtimeSeconds * (0.16 + 0.16 * random.next())),
  }));
}
