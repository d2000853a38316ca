import { z } from "zod";
import type { Result } from "#lib/base/index.ts";
import type { Answer } from "./entry-answer.ts";

/** A phone's entries with room for long notes; more than this is not from our page. */
const BODY_LETTERS_MAX = 200_000;

/** What a phone sends at once: its entries in the order they were made. */
const Batch = z.object({
  /** Each is checked by itself, so that a bad one does not hold up the rest. */
  entries: z.array(z.unknown()).min(1).max(60),
});

/**
 * Hands the entries of a request that are whole to `apply`, all at once, and answers each by its place:
 * what stands after it, or why it cannot be kept.
 */
export async function answerEach<Schema extends z.ZodType, State, Problem>(
  request: Request,
  schema: Schema,
  apply: (good: readonly z.infer<Schema>[]) => Promise<readonly Result<State, Problem>[]>,
  describe: (problem: Problem) => string,
): Promise<Response> {
  const batch = Batch.safeParse(await readJson(request));
  if (!batch.success) return Response.json({ message: "These are no entries." }, { status: 400 });
  const parsed = batch.data.entries.map((entry) => schema.safeParse(entry));
  const good = parsed.flatMap((one) => (one.success ? [one.data] : []));
  const outcomes = good.length === 0 ? [] : await apply(good);
  let next = 0;
  const answers = parsed.map((one): Answer<State> => {
    if (!one.success) {
      const message = one.error.issues[0]?.message ?? "This entry is not whole.";
      return { kind: "refused", message };
    }
    const outcome = outcomes[next++];
    if (!outcome) throw new Error("An entry has no outcome.");
    return outcome.ok
      ? { kind: "kept", state: outcome.value }
      : { kind: "refused", message: describe(outcome.problem) };
  });
  return Response.json({ answers });
}

async function readJson(request: Request): Promise<unknown> {
  const text = await request.text();
  if (text.length > BODY_LETTERS_MAX) return undefined;
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
