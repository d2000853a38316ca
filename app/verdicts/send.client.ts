import type { Cell, EntryAnswer } from "./entry-answer.ts";
import type { Entry, Outbox } from "./outbox.client.ts";

/** How sending ended: all acknowledged, nobody answered, or the door asks for the passphrase. */
export type Sending = "sent" | "unreachable" | "locked";

const BATCH = 40;

/**
 * Sends what waits, oldest first, until nothing does. What the server acknowledged leaves the outbox;
 * a lost answer leaves it there to be sent again, which changes nothing.
 */
export async function sendWaiting(
  outbox: Outbox,
  onKept: (cells: readonly Cell[]) => void,
): Promise<Sending> {
  for (;;) {
    const batch = (await outbox.waiting())
      .filter(({ problem }) => problem === undefined)
      .slice(0, BATCH)
      .map(({ entry }) => entry);
    if (batch.length === 0) return "sent";
    const answers = await post(batch);
    if (typeof answers === "string") return answers;
    const cells: Cell[] = [];
    const kept: string[] = [];
    for (const [index, entry] of batch.entries()) {
      const answer = answers[index];
      if (answer?.kind === "kept") {
        kept.push(entry.id);
        cells.push(answer.cell);
      } else await outbox.refuse(entry, answer?.message ?? "Noonbook did not say why.");
    }
    await outbox.settle(kept, cells);
    onKept(cells);
  }
}

async function post(entries: readonly Entry[]): Promise<readonly EntryAnswer[] | Sending> {
  try {
    const response = await fetch("/verdicts/entries", {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify({ entries }),
    });
    if (response.status === 401 || response.redirected) return "locked";
    if (!response.ok) return "unreachable";
    const { answers } = (await response.json()) as { answers: readonly EntryAnswer[] };
    return answers;
  } catch {
    return "unreachable";
  }
}

/** The verdicts of a day as the server has them now; undefined when it does not answer. */
export async function askForCells(date: string): Promise<readonly Cell[] | undefined> {
  try {
    const response = await fetch(`/verdicts/cells?date=${date}`);
    if (!response.ok || response.redirected) return undefined;
    const { cells } = (await response.json()) as { cells: readonly Cell[] };
    return cells;
  } catch {
    return undefined;
  }
}
