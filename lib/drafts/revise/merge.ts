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
  const parts: Part[] = diff3Merge(mine, tokensOf(written), tokensOf(now)).map((region) =>
    region.ok
      ? { same: region.ok }
      : {
          conflict: {
            mine: textOfTokens(region.conflict?.a ?? []),
            theirs: textOfTokens(region.conflict?.b ?? []),
          },
        },
  );
  return {
    conflicts: parts.flatMap((part) => ("conflict" in part ? [part.conflict] : [])),
    text: (choices) => joined(parts, choices),
  };
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
