/**
 * Marks that travel with a text through a template, so that each stretch of the result still knows the
 * fact it tells. They are private-use characters: `tidy` keeps them out of records, and changing the
 * case of a text leaves them alone.
 */
const OPEN = "\uE000";
const NAMED = "\uE001";
const CLOSE = "\uE002";
const DIGIT_ZERO = 0xe010;
/** A mark that opens with its digits, a mark that closes, or the words up to the next mark. */
const STRETCHES = /\uE000([^\uE001]*)\uE001|\uE002|[^\uE000\uE002]+/gu;

/** A stretch of a line and the number of the fact it tells. */
type Run = { readonly from: number; readonly to: number; readonly fact: number };

/** One line of plain text with its stretches. */
export type MarkedLine = { readonly text: string; readonly runs: readonly Run[] };

/** A text that tells a fact, by the fact's number. */
export function marked(text: string, fact: number): string {
  const digits = [...String(fact)].map((digit) => String.fromCharCode(DIGIT_ZERO + Number(digit)));
  return `${OPEN}${digits.join("")}${NAMED}${text}${CLOSE}`;
}

/**
 * The lines of a marked text without its marks: single spaces, none at the ends of a line, no more
 * than one empty line in a row and none at either end.
 */
export function readMarks(text: string): MarkedLine[] {
  const open: { fact: number; from: number }[] = [];
  const lines: { text: string; runs: Run[] }[] = [];
  for (const part of text.split("\n")) {
    const line: { text: string; runs: Run[] } = { text: "", runs: [] };
    open.forEach((run) => (run.from = 0));
    for (const [stretch, digits] of part.matchAll(STRETCHES)) {
      if (digits !== undefined) open.push({ fact: numberOf(digits), from: line.text.length });
      else if (stretch === CLOSE) {
        const run = open.pop();
        if (run) line.runs.push({ ...run, to: line.text.length });
      } else line.text = joined(line.text, stretch);
    }
    for (const run of open) line.runs.push({ ...run, to: line.text.length });
    lines.push(line);
  }
  return withoutExtraBlanks(lines.map(trimmed));
}

function numberOf(digits: string): number {
  return Number([...digits].map((digit) => digit.charCodeAt(0) - DIGIT_ZERO).join(""));
}

/** A line and what comes next, with single spaces and none at its start. */
function joined(line: string, next: string): string {
  const plain = /[\t\u00A0]| {2}/u.test(next) ? next.replace(/[ \t\u00A0]+/gu, " ") : next;
  return plain.startsWith(" ") && (line === "" || line.endsWith(" "))
    ? line + plain.slice(1)
    : line + plain;
}

function trimmed({ text, runs }: MarkedLine): MarkedLine {
  const end = text.trimEnd();
  return {
    text: end,
    runs: runs
      .map((run) => ({ ...run, to: Math.min(run.to, end.length) }))
      .filter((run) => run.to > run.from),
  };
}

function withoutExtraBlanks(lines: readonly MarkedLine[]): MarkedLine[] {
  const kept = lines.filter(
    (line, index) => line.text !== "" || (index > 0 && lines[index - 1]?.text !== ""),
  );
  while (kept.at(-1)?.text === "") kept.pop();
  while (kept[0]?.text === "") kept.shift();
  return kept;
}
