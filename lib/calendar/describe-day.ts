import { daysBetween, partsOf, weekdayOf, type Day } from "./day.ts";

export const WEEKDAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"] as const;
const LONG_WEEKDAYS = [
  "Monday",
  "Tuesday",
  "Wednesday",
  "Thursday",
  "Friday",
  "Saturday",
  "Sunday",
] as const;
export const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
] as const;

/** "Wed 11" */
export function shortDay(day: Day): string {
  return `${WEEKDAYS[weekdayOf(day) - 1] ?? ""} ${partsOf(day)[2]}`;
}

/** "Wed 11 March" */
export function mediumDay(day: Day): string {
  return `${shortDay(day)} ${monthName(day)}`;
}

/** As short as stays clear: "Sat 14" within six days, "12 Mar" within the year, "12 Mar 2025" beyond. */
export function nearDay(day: Day, today: Day): string {
  const [year, , date] = partsOf(day);
  if (Math.abs(daysBetween(today, day)) <= 6) return shortDay(day);
  const short = `${date} ${monthName(day).slice(0, 3)}`;
  return year === partsOf(today)[0] ? short : `${short} ${year}`;
}

/** "Wednesday 11 March 2026" */
export function longDay(day: Day): string {
  const [year, , date] = partsOf(day);
  return `${longWeekday(day)} ${date} ${monthName(day)} ${year}`;
}

/** "Wednesday" */
export function longWeekday(day: Day): string {
  return LONG_WEEKDAYS[weekdayOf(day) - 1] ?? "";
}

/** "March" */
export function monthName(day: Day): string {
  return MONTHS[partsOf(day)[1] - 1] ?? "";
}

/** "March 2026" */
export function monthTitle(day: Day): string {
  return `${monthName(day)} ${partsOf(day)[0]}`;
}

/** "2–6 March", "30 March – 3 April" */
export function daySpan(from: Day, to: Day): string {
  const sameMonth = from.slice(0, 7) === to.slice(0, 7);
  return sameMonth
    ? `${partsOf(from)[2]}–${partsOf(to)[2]} ${monthName(to)}`
    : `${partsOf(from)[2]} ${monthName(from)} – ${partsOf(to)[2]} ${monthName(to)}`;
}

/** "today", "yesterday", "9 days ago", "in 3 days" */
export function daysAgo(day: Day, today: Day): string {
  const days = daysBetween(day, today);
  if (days === 0) return "today";
  if (days === 1) return "yesterday";
  if (days === -1) return "tomorrow";
  return days > 0 ? `${days} days ago` : `in ${-days} days`;
}
