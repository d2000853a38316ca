const WEEKDAY = new Intl.DateTimeFormat("en", { weekday: "long", timeZone: "UTC" });

/** Words joined with commas and a last "and"; empty for none. */
export function listOf(words: readonly string[]): string {
  return new Intl.ListFormat("en", { type: "conjunction" }).format(words);
}

/** English weekday name of a calendar date `YYYY-MM-DD`. */
export function weekdayName(day: string): string {
  return WEEKDAY.format(new Date(`${day}T00:00:00Z`));
}

/** Text on one line with single spaces, so that no record can break a sentence. */
export function tidy(text: string): string {
  return text.replace(/\s+/gu, " ").trim();
}
