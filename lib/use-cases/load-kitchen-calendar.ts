import {
  addDays,
  clockTime,
  mediumDay,
  mondayOf,
  weeksLater,
  type Day,
} from "#lib/calendar/index.ts";
import { planKitchen, type Placed } from "#lib/kitchen/index.ts";
import {
  keepUntilWritten,
  readEpisodes,
  readSettings,
  type Db,
  type EpisodeRecord,
  type LunchRecord,
  type Settings,
} from "#lib/db/index.ts";
import { calendarText, type CalendarEntry } from "./calendar-text.ts";
import type { Context } from "./context.ts";
import { describeStep } from "./describe-mise.ts";
import { loadErrands } from "./errands/load-errands.ts";
import type { RunView } from "./errands/run-view.ts";
import { kitchenOf, readSteps } from "./kitchen-day.ts";

const DAYS_BEHIND = 7;
const DAYS_AHEAD = 42;
const DOOR_MINUTES = 5;
const DOOR_WARNING_MINUTES = 10;
/** When a shopping day rings (common practice, no source). */
const ERRANDS_RING_AT = 8 * 60;

/**
 * The calendar of the kitchen as iCalendar text: the prep of each lunch, the door, the shopping days,
 * each with its alarms; from a week back to six weeks ahead. No child is named in it.
 */
export async function loadKitchenCalendar(context: Context, machineZone: string): Promise<string> {
  const { db, today, now } = context;
  const [from, to] = [addDays(today, -DAYS_BEHIND), addDays(today, DAYS_AHEAD)];
  const settings = await readSettings(db);
  const entries = await keepUntilWritten(db, `calendar ${today}`, async () => {
    const episodes = await readEpisodes(db, mondayOf(from), to);
    const lunches = episodes.flatMap((episode) =>
      episode.lunches
        .filter(({ date }) => date >= from && date <= to)
        .map((lunch) => entriesOf(db, episode, lunch, settings)),
    );
    return [...(await Promise.all(lunches)).flat(), ...(await errands(context))];
  });
  return calendarText("Noonbook: the kitchen", entries, settings.timeZone ?? machineZone, now);
}

/** The calendar of one lunch, or undefined when none is pencilled for the day. */
export async function loadDayCalendar(
  { db, now }: Context,
  date: Day,
  machineZone: string,
): Promise<string | undefined> {
  const monday = mondayOf(date);
  const [settings, episodes] = await Promise.all([
    readSettings(db),
    readEpisodes(db, monday, monday),
  ]);
  const episode = episodes[0];
  const lunch = episode?.lunches.find((one) => one.date === date);
  if (!episode || !lunch) return undefined;
  const entries = await entriesOf(db, episode, lunch, settings);
  const zone = settings.timeZone ?? machineZone;
  return calendarText(`Noonbook: ${mediumDay(date)}`, entries, zone, now);
}

async function entriesOf(
  db: Db,
  episode: EpisodeRecord,
  lunch: LunchRecord,
  settings: Settings,
): Promise<CalendarEntry[]> {
  const kitchen = kitchenOf(settings);
  const plan = planKitchen(await readSteps(db, lunch), kitchen);
  const title = episode.theme?.name ?? (episode.workingTitle || "Untitled week");
  const { date } = lunch;
  const of = `${mediumDay(date)} (${title})`;
  const part = (name: string, placed: readonly Placed[], to: number): CalendarEntry[] => {
    const from = placed[0]?.start;
    if (from === undefined) return [];
    return [
      {
        ...{ uid: `${name.toLowerCase()}-${date}@noonbook`, day: date, from, to },
        title: `${name} prep for ${of}`,
        text: placed.map(describePlaced).join("\n"),
        alarms: callsOf(placed),
      },
    ];
  };
  const door: CalendarEntry = {
    ...{
      uid: `door-${date}@noonbook`,
      day: date,
      title: "Out of the door",
      text: `Lunch of ${of}`,
    },
    ...{ from: kitchen.departure, to: kitchen.departure + DOOR_MINUTES },
    alarms: [
      { at: kitchen.departure - DOOR_WARNING_MINUTES, text: "Out of the door in 10 minutes" },
    ],
  };
  return [
    ...part("Evening", plan.evening, plan.eveningEnd?.at ?? kitchen.bedtime),
    ...part("Morning", plan.morning, kitchen.departure),
    ...(lunch.items.length > 0 ? [door] : []),
  ];
}

function describePlaced({ step, start, end }: Placed): string {
  return `${clockTime(start)}–${clockTime(end)} ${describeStep(step)}`;
}

/** When somebody is called to the kitchen: at the first step, and whenever hands are needed after a wait. */
function callsOf(placed: readonly Placed[]): CalendarEntry["alarms"] {
  let free = -Infinity;
  return placed.flatMap(({ step, start, end }, index) => {
    const isCalled = index === 0 || (step.handsOn && start > free);
    if (step.handsOn || index === 0) free = Math.max(free, step.handsOn ? end : start);
    return isCalled ? [{ at: start, text: describeStep(step) }] : [];
  });
}

/** The shopping days of this week and the next that are not done, as whole days with their lists. */
async function errands(context: Context): Promise<CalendarEntry[]> {
  const monday = mondayOf(context.today);
  const runs: RunView[] = [];
  // One after another: what one week leaves, the next can use.
  for (const week of [monday, weeksLater(monday, 1)])
    runs.push(...((await loadErrands(context, week))?.runs ?? []));
  return runs
    .filter(({ isDone }) => !isDone)
    .map(({ shopId, shopName, hours, day, aisles }) => {
      const lines = aisles.flatMap((aisle) => aisle.lines).filter(({ state }) => state === "open");
      return {
        ...{ uid: `errand-${shopId}-${day}@noonbook`, day, from: null, to: null },
        title: `Errands: ${shopName}`,
        text: [hours && `Open ${hours}`, ...lines.map(({ name }) => name)]
          .filter(Boolean)
          .join("\n"),
        alarms: [{ at: ERRANDS_RING_AT, text: `Errands today: ${shopName}` }],
      };
    });
}
