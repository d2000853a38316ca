/** Characters that carry marks inside this subject, and controls that could break a line. */
const KEPT_OUT = /[\uE000-\uF8FF\p{Cc}\u2028\u2029]/gu;
const RIGHT_TO_LEFT = /[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC]/u;

/** Text on one line with single spaces and no stray controls, so that no record can break a sentence. */
export function tidy(text: string): string {
  return text
    .replace(KEPT_OUT, " ")
    .replace(/\{[{%]|[%}]\}/gu, (braces) => braces.replace("%", "").slice(0, 1))
    .replace(/\s+/gu, " ")
    .trim();
}

/** A record's own words ready to stand in a line of ours: right-to-left text is isolated (Unicode UAX #9, FSI … PDI). */
export function isolated(text: string): string {
  return RIGHT_TO_LEFT.test(text) ? `\u2068${text}\u2069` : text;
}

/** A text that begins a sentence: its first letter large. */
export function capital(text: string): string {
  const first = [...text][0] ?? "";
  return first.toUpperCase() + text.slice(first.length);
}

/** A text closed by one full stop, unless it ends a sentence already. */
export function closed(text: string): string {
  return /[.!?…]["”’»\u2069]*$/u.test(text) ? text : `${text}.`;
}

/** What was said, in quotation marks: its own marks become single ones, and it ends its sentence. */
export function quoted(text: string): string {
  const inner = text.replace(/[“”„«»"]/gu, "’").trim();
  return /[.!?…]$/u.test(inner) ? `“${isolated(inner)}”` : `“${isolated(inner)}”.`;
}
