import type { MarkedLine } from "./marks.ts";

/** A sentence of a draft and the facts it tells, by their ids. None: the template's or the user's own words. */
export type Sentence = { readonly text: string; readonly facts: readonly string[] };

/** A line of a draft: its sentences; none: an empty line. */
export type Line = readonly Sentence[];

/** Where a sentence ends: its mark, what closes around it, and the space before the next. */
const SENTENCE_END = /[.!?…؟。！？]+["'”’»)\]\u2069]*\s+(?=\S)/gu;

/** The sentences of a line. A stretch that tells one fact is never cut in two, whatever is quoted in it. */
export function sentencesOf(line: MarkedLine, factIds: readonly string[]): Line {
  const cuts = cutsOf(line.text).filter(
    (cut) => !line.runs.some((run) => run.from < cut && cut < run.to),
  );
  const edges = [0, ...cuts, line.text.length];
  return edges.slice(1).flatMap((to, index) => {
    const from = edges[index] ?? 0;
    const text = line.text.slice(from, to).trim();
    if (text === "") return [];
    const facts = line.runs
      .filter((run) => run.from < to && run.to > from)
      .flatMap((run) => factIds[run.fact] ?? []);
    return [{ text, facts: [...new Set(facts)] }];
  });
}

/** Plain sentences of a text nobody marked. */
export function plainSentences(text: string): string[] {
  const edges = [0, ...cutsOf(text), text.length];
  return edges
    .slice(1)
    .map((to, index) => text.slice(edges[index], to).trim())
    .filter(Boolean);
}

/** Where the second and later sentences of a text begin. */
function cutsOf(text: string): number[] {
  return [...text.matchAll(SENTENCE_END)].map((hit) => hit.index + hit[0].length);
}

/** The text of lines: sentences with a space between, lines with a line break. */
export function textOfLines(lines: readonly Line[]): string {
  return lines.map((line) => line.map(({ text }) => text).join(" ")).join("\n");
}
