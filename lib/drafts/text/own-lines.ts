import type { OwnSentence } from "../guards/check.ts";
import { plainSentences, type Line } from "./sentences.ts";

/**
 * The sentences of a text as the user has it. Those that stand in the draft as it was written keep
 * the facts they tell; all others are the user's own.
 */
export function ownLines(body: string, written: readonly Line[]): OwnSentence[][] {
  const known = new Map<string, OwnSentence>();
  for (const sentence of written.flat()) {
    if (!known.has(sentence.text)) known.set(sentence.text, { ...sentence, isOwn: false });
  }
  // Longest first, so that a sentence is not taken for a shorter one inside it.
  const texts = [...known.keys()].sort((one, other) => other.length - one.length);
  return body
    .replace(/\r\n?/gu, "\n")
    .split("\n")
    .map((line) => splitLine(line.replace(/\s+/gu, " ").trim(), texts, known));
}

function splitLine(
  line: string,
  texts: readonly string[],
  known: ReadonlyMap<string, OwnSentence>,
): OwnSentence[] {
  if (line === "") return [];
  const hit = texts.find((text) => isWholeIn(line, text));
  if (hit === undefined) {
    return plainSentences(line).map((text) => ({ text, facts: [], isOwn: true }));
  }
  const sentence = known.get(hit);
  const at = line.indexOf(hit);
  return [
    ...splitLine(line.slice(0, at).trim(), texts, known),
    ...(sentence ? [sentence] : []),
    ...splitLine(line.slice(at + hit.length).trim(), texts, known),
  ];
}

/** Whether a sentence stands in a line with nothing but space around it. */
function isWholeIn(line: string, text: string): boolean {
  const at = line.indexOf(text);
  if (at === -1) return false;
  const before = line[at - 1];
  const after = line[at + text.length];
  return (before === undefined || before === " ") && (after === undefined || after === " ");
}
