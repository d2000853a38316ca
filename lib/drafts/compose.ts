import { ok, type Result } from "#lib/base/index.ts";
import { day, daysBetween } from "#lib/calendar/index.ts";
import type { Fact } from "./facts/fact.ts";
import { factsOfClean } from "./facts/facts-of.ts";
import { cleanRecords } from "./facts/clean-records.ts";
import type { EpisodeRecords } from "./records.ts";
import { renderTemplate, type TemplateProblem } from "./template/engine.ts";
import { scopeOf, type Told } from "./template/scope.ts";
import { readMarks } from "./text/marks.ts";
import { sentencesOf, textOfLines, type Line } from "./text/sentences.ts";

/** A text as it follows from the records. */
export type Composed = {
  readonly lines: readonly Line[];
  readonly text: string;
  /** The facts its sentences tell. */
  readonly facts: readonly Fact[];
};

/** Turns are counted in weeks from this Monday on. */
const FIRST_MONDAY = day("2001-01-01");

/** What all pieces of an episode are written from; made once for them all. */
export function tellingOf(records: EpisodeRecords, salt = 0): Told {
  const clean = cleanRecords(records);
  const facts = factsOfClean(clean);
  return {
    ...{ facts, factIds: facts.map(({ id }) => id) },
    voice: clean.voice,
    seriesName: clean.seriesName,
    number: clean.number,
    turn: Math.floor(daysBetween(FIRST_MONDAY, clean.weekOf) / 7),
    title: clean.title,
    days: clean.lunches.map(({ id, date }) => ({ lunchId: id, date })),
    salt,
  };
}

/** One piece, sentence by sentence with the facts each tells; or what is wrong with its template. */
export function compose(
  told: Told,
  template: string,
  lunchId: string | null = null,
): Result<Composed, TemplateProblem> {
  const written = renderTemplate(template, scopeOf(told, lunchId ?? undefined));
  if (!written.ok) return written;
  const lines = readMarks(written.value).map((line) => sentencesOf(line, told.factIds));
  const used = new Set(lines.flat().flatMap((sentence) => sentence.facts));
  return ok({
    ...{ lines, text: textOfLines(lines) },
    facts: told.facts.filter((fact) => used.has(fact.id)),
  });
}
