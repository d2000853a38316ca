const WORDS = [
  "no",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve",
] as const;

/** A whole number as running text has it: words up to twelve, then digits. */
export function numberWord(count: number): string {
  return WORDS[count] ?? String(count);
}

/** "one lunch", "five lunches": the number in words and its noun in the right form. */
export function counted(count: number, one: string, many: string): string {
  return `${numberWord(count)} ${count === 1 ? one : many}`;
}

/** "1st", "22nd", "100th", "113th". */
export function ordinal(number: number): string {
  const rest = number % 100;
  if (rest >= 11 && rest <= 13) return `${number}th`;
  return `${number}${["th", "st", "nd", "rd"][number % 10] ?? "th"}`;
}

/** Minutes as spoken: "22 minutes", "1 minute". */
export function minutesText(minutes: number): string {
  const whole = Math.round(minutes);
  return `${whole} ${whole === 1 ? "minute" : "minutes"}`;
}
