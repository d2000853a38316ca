import { mediumDay, partsOf } from "#lib/calendar/index.ts";
import type { Echo, EchoAspect } from "./echo.ts";
import type { ShownWeek } from "./shown.ts";

const REASONS_SHOWN = 4;

/**
 * An echo in one sentence, strongest reasons first: "31 % like the week of Mon 3 March 2025: hummus,
 * cucumber." Theme and motif ids carry their kind in front ("theme:…", "motif:…").
 */
export function describeEcho(
  week: ShownWeek,
  echo: Echo,
  nameOf: (aspect: EchoAspect, id: string) => string,
): string {
  const percent = Math.round(echo.value * 100);
  const when = `${mediumDay(week.week)} ${partsOf(week.week)[0]}`;
  const names = echo.reasons.slice(0, REASONS_SHOWN).map(({ aspect, id }) => nameOf(aspect, id));
  const why = names.length === 0 ? "" : `: ${[...new Set(names)].join(", ")}`;
  return `${percent} % like the week of ${when}${why}.`;
}
