import type { Sentence } from "../text/sentences.ts";
import { capital, listOf } from "../words/index.ts";

/** A sentence that went out, and what it should have been; undefined: it should not have been at all. */
export type LateChange = { readonly name: string; readonly was: string; readonly now?: string };

/**
 * What of a published piece the records no longer hold. Each sentence goes with the one that tells the
 * same fact now.
 */
export function lateChanges(
  name: string,
  published: readonly Sentence[],
  now: readonly Sentence[],
): LateChange[] {
  const stands = new Set(now.map(({ text }) => text));
  const went = new Set(published.map(({ text }) => text));
  return published
    .filter(({ text, facts }) => facts.length > 0 && !stands.has(text))
    .map(({ text: was, facts }) => {
      const next = now.find(
        (one) => !went.has(one.text) && one.facts.some((id) => facts.includes(id)),
      );
      return next === undefined ? { name, was } : { name, was, now: next.text };
    });
}

/**
 * A note that sets right what was published, each sentence once however many pieces held it; empty when
 * there is nothing to set right. What is merely added is no correction.
 */
export function correctionNote(changes: readonly LateChange[]): string {
  const seen = new Map<string, { now: string | undefined; names: Set<string> }>();
  for (const { name, was, now } of changes) {
    const entry = seen.get(was) ?? { now, names: new Set() };
    entry.names.add(name.toLowerCase());
    seen.set(was, entry);
  }
  const lines = [...seen].map(([was, { now, names }]) => {
    const where = listOf([...names].map((name) => `the ${name}`));
    const before = `${capital(where)} said: ${was}`;
    return now === undefined
      ? `${before} That does not hold.`
      : `${before} It should have said: ${now}`;
  });
  return lines.length === 0 ? "" : ["A correction.", ...lines].join("\n");
}
