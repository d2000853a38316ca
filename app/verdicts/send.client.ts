import type { PhotoView } from "#lib/use-cases/photos/photos.ts";
import type { FactsEntry, PhotoEntry, VerdictEntry } from "./entries.ts";
import type { Answer, Cell, DayState } from "./entry-answer.ts";
import type { Outbox, Shelf } from "./outbox.client.ts";

/** How sending ended: all acknowledged, nobody answered, or the door asks for the passphrase. */
export type Sending = "sent" | "unreachable" | "locked";

/** What is done with what the server says. */
export type Hear = {
  readonly cells: (cells: readonly Cell[]) => void;
  readonly days: (days: readonly DayState[]) => void;
  readonly photo: (photo: PhotoView) => void;
};

const BATCH = 40;

/**
 * Sends the verdicts and facts that wait, oldest first, until nothing does. What the server acknowledged
 * leaves the outbox; a lost answer leaves it there to be sent again, which changes nothing.
 */
export async function sendEntries(outbox: Outbox, hear: Hear): Promise<Sending> {
  const verdicts = await sendShelf<VerdictEntry, Cell>(
    outbox.shelves.verdicts,
    "/verdicts/entries",
    async (cells) => {
      await outbox.remember({ cells, days: [] });
      hear.cells(cells);
    },
  );
  if (verdicts !== "sent") return verdicts;
  return sendShelf<FactsEntry, DayState>(outbox.shelves.facts, "/verdicts/facts", async (days) => {
    await outbox.remember({ cells: [], days });
    hear.days(days);
  });
}

async function sendShelf<Entry extends { readonly id: string }, State>(
  shelf: Shelf<Entry>,
  address: string,
  onKept: (states: readonly State[]) => Promise<void>,
): Promise<Sending> {
  for (;;) {
    const batch = (await shelf.waiting())
      .filter(({ problem }) => problem === undefined)
      .slice(0, BATCH)
      .map(({ entry }) => entry);
    if (batch.length === 0) return "sent";
    const said = await post(address, JSON.stringify({ entries: batch }));
    if (typeof said === "string") return said;
    if (!said.ok) return "unreachable";
    const { answers } = said.body as { answers: readonly Answer<State>[] };
    const states: State[] = [];
    const kept: string[] = [];
    for (const [index, entry] of batch.entries()) {
      const answer = answers[index];
      if (answer?.kind === "kept") {
        kept.push(entry.id);
        states.push(answer.state);
      } else await shelf.refuse(entry, answer?.message ?? NO_REASON);
    }
    await onKept(states);
    await shelf.remove(kept);
  }
}

const NO_REASON = "Noonbook did not say why.";

/** Sends the photos that wait, one at a time: each may take a while. */
export async function sendPhotos(outbox: Outbox, hear: Hear): Promise<Sending> {
  for (;;) {
    const next = (await outbox.shelves.photos.waiting()).find(
      ({ problem }) => problem === undefined,
    );
    if (!next) return "sent";
    const { entry } = next;
    const said = await post("/verdicts/photos", formOf(entry));
    if (typeof said === "string") return said;
    if (said.ok) {
      const { photo } = said.body as { photo: PhotoView | null };
      if (photo) hear.photo(photo);
      await outbox.shelves.photos.remove([entry.id]);
    } else await outbox.shelves.photos.refuse(entry, said.message ?? NO_REASON);
  }
}

function formOf({ id, lunchId, keepOriginal, file }: PhotoEntry): FormData {
  const form = new FormData();
  form.set("id", id);
  form.set("lunchId", lunchId);
  if (keepOriginal) form.set("keepOriginal", "on");
  form.set("photo", file, "photo");
  return form;
}

type Refusal = { readonly ok: false; readonly message: string | undefined };

/** What the server answers: yes, a refusal of what was sent, or nothing that counts as an answer. */
async function post(
  address: string,
  body: string | FormData,
): Promise<{ readonly ok: true; readonly body: unknown } | Refusal | Exclude<Sending, "sent">> {
  try {
    const headers = typeof body === "string" ? { "Content-Type": "application/json" } : undefined;
    const response = await fetch(address, { method: "POST", body, ...(headers && { headers }) });
    if (response.status === 401 || response.redirected) return "locked";
    if (response.status >= 500) return "unreachable";
    const said: unknown = await response.json();
    if (response.ok) return { ok: true, body: said };
    return { ok: false, message: (said as { message?: string }).message };
  } catch {
    return "unreachable";
  }
}

/** The verdicts and facts of a day as the server has them now; undefined when it does not answer. */
export async function askForDay(
  date: string,
): Promise<{ readonly cells: readonly Cell[]; readonly facts?: DayState } | undefined> {
  try {
    const response = await fetch(`/verdicts/cells?date=${date}`);
    if (!response.ok || response.redirected) return undefined;
    return (await response.json()) as { cells: readonly Cell[]; facts?: DayState };
  } catch {
    return undefined;
  }
}
