/**
 * Marks that travel with a text through a template, so that each stretch of the result still knows the
 * fact it tells. They are private-use characters: `tidy` keeps them out of records, and changing the
 * case of a text leaves them alone.
 */
const OPEN = "\uE000";
const NAMED = "\uE001";
const CLOSE = "\uE002";
const DIGIT_ZERO = 0xe010;

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
  const lines: { text: string; runs: Run[] }[] = [{ text: "", runs: [] }];
  let digits = "";
  let isNaming = false;
  for (const character of text) {
    const line = lines.at(-1) ?? { text: "", runs: [] };
    if (character === OPEN) {
      isNaming = true;
      digits = "";
    } else if (isNaming && character === NAMED) {
      isNaming = false;
      open.push({ fact: Number(digits), from: line.text.length });
    } else if (isNaming) {
      digits += String(character.charCodeAt(0) - DIGIT_ZERO);
    } else if (character === CLOSE) {
      const run = open.pop();
      if (run) line.runs.push({ ...run, to: line.text.length });
    } else if (character === "\n") {
      for (const run of open) line.runs.push({ ...run, to: line.text.length });
      lines.push({ text: "", runs: [] });
      open.forEach((run) => (run.from = 0));
    } else if (character === " " || character === "\t" || character === "\u00A0") {
      if (line.text !== "" && !line.text.endsWith(" ")) line.text += " ";
    } else line.text += character;
  }
  return withoutExtraBlanks(lines.map(trimmed));
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
