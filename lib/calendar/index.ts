/** Calendar: plan days without clocks, ISO 8601 weeks, feasts, seasons, and how a day is written. */
export {
  addDays,
  Day,
  day,
  dayFrom,
  dayNumber,
  dayOfNumber,
  daysBetween,
  partsOf,
  weekdayOf,
  type Weekday,
} from "./day.ts";
export {
  daysOfWeek,
  isoWeekOf,
  isoWeeksInYear,
  mondayOf,
  monthsLater,
  monthStart,
  weeksLater,
  weeksOfMonth,
} from "./week.ts";
export { easterSunday, FEAST_OFFSETS, feastDay, type MovingFeast } from "./easter.ts";
export { EventWeeks, isSameEvent, type SchoolEvent } from "./school-event.ts";
export { overlapsSeason, SeasonWindow } from "./season-window.ts";
export {
  daysAgo,
  daySpan,
  longDay,
  longWeekday,
  mediumDay,
  monthName,
  MONTHS,
  monthTitle,
  nearDay,
  shortDay,
  WEEKDAYS,
} from "./describe-day.ts";
export { ClockTime, clockTime, minutesOfDay } from "./clock.ts";
export {
  clockChanges,
  instantOf,
  isTimeZone,
  timeZones,
  offsetSeconds,
  wallClock,
  type ClockChange,
  type WallClock,
} from "./zone.ts";
