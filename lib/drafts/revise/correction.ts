import type { Staleness } from "./stale.ts";
import { listOf } from "../words/index.ts";

/** A published piece whose records changed since. */
export type LateChange = { readonly name: string } & Pick<Staleness, "outdated" | "fresh">;

/**
 * A note that sets right what was published, each sentence once however many pieces held it; empty when
 * there is nothing to set right. What is merely added is no correction.
 */
export function correctionNote(changes: readonly LateChange[]): string {
  const seen = new Map<string, { now: string | undefined; names: string[] }>();
  for (const { name, outdated, fresh } of changes) {
    outdated.forEach((was, index) => {
      const entry = seen.get(was) ?? { now: fresh[index], names: [] };
      seen.set(was, { ...entry, names: [...entry.names, name.toLowerCase()] });
    });
  }
  const lines = [...seen].map(([was, { now, names }]) => {
    const where = listOf([...new Set(names)].map((name) => `the ${name}`));
    const before = `In ${where} we wrote: ${was}`;
    return now === undefined
      ? `${before} That does not hold; please read past it.`
      : `${before} It should read: ${now}`;
  });
  return lines.length === 0 ? "" : ["A correction.", ...lines].join("\n");
}
