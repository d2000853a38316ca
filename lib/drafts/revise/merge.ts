import { diff3Merge } from "node-diff3";
import { ownLines } from "../text/own-lines.ts";
import type { Line } from "../text/sentences.ts";

/** Two ways that one passage could go: the user's, and what the records say now. */
export type Conflict = { readonly mine: string; readonly theirs: string };

/** How a conflict is settled. */
export type Choice = "mine" | "theirs" | "both";

const BREAK = "\n";

type Part = { readonly same: readonly string[] } | { readonly conflict: Conflict };

/**
 * The user's text brought up to date, sentence by sentence: what only the user changed stays, what
 * only the records changed is taken over, and what both changed is a conflict.
 */
export function mergeDraft(
  body: string,
  written: readonly Line[],
  now: readonly Line[],
): {
  readonly conflicts: readonly Conflict[];
  readonly text: (choices: readonly Choice[]) => string;
} {
  const known = [...written, ...now];
  const mine = tokensOf(ownLines(body, known));
  const parts = diff3Merge(mine, tokensOf(written), tokensOf(now)).map(partOf);
  return {
    conflicts: parts.flatMap((part) => ("conflict" in part ? [part.conflict] : [])),
    text: (choices) => joined(parts, choices),
  };
}

type Region = ReturnType<typeof diff3Merge<string>>[number];

function partOf(region: Region): Part {
  if (region.ok) return { same: region.ok };
  const { a: mine = [], o: base = [], b: theirs = [] } = region.conflict ?? {};
  const same = besideOf(mine, base, theirs) ?? besideOf(theirs, base, mine);
  if (same) return { same };
  return { conflict: { mine: textOfTokens(mine), theirs: textOfTokens(theirs) } };
}

/** When one side only wrote before or after the passage that the other changed, both stand. */
function besideOf(
  longer: readonly string[],
  base: readonly string[],
  other: readonly string[],
): string[] | undefined {
  const startsWith = base.every((token, index) => longer[index] === token);
  if (startsWith) return [...other, ...longer.slice(base.length)];
  const offset = longer.length - base.length;
  const endsWith = offset >= 0 && base.every((token, index) => longer[offset + index] === token);
  return endsWith ? [...longer.slice(0, offset), ...other] : undefined;
}

function joined(parts: readonly Part[], choices: readonly Choice[]): string {
  let turn = 0;
  const tokens = parts.flatMap((part) => {
    if ("same" in part) return part.same;
    const choice = choices[turn] ?? "mine";
    turn += 1;
    const { mine, theirs } = part.conflict;
    const texts = choice === "both" ? [mine, theirs] : [choice === "mine" ? mine : theirs];
    return texts.flatMap((text) => text.split(/(\n)/u)).filter((token) => token !== "");
  });
  return textOfTokens(tokens)
    .replace(/\n{3,}/gu, "\n\n")
    .trim();
}

function tokensOf(lines: readonly Line[]): string[] {
  return lines.flatMap((line, index) => [
    ...(index > 0 ? [BREAK] : []),
    ...line.map(({ text }) => text),
  ]);
}

function textOfTokens(tokens: readonly string[]): string {
  let text = "";
  for (const token of tokens) {
    const needsSpace = text !== "" && !text.endsWith(BREAK) && token !== BREAK;
    text += needsSpace ? ` ${token}` : token;
  }
  return text;
}
