import { requestContext } from "#app/_server/context.ts";
import { LogReactionInput, LogReactionsInput } from "#lib/use-cases/log-reaction.input.ts";
import { describeLogProblem, logReactions } from "#lib/use-cases/log-reaction.ts";
import type { EntryAnswer } from "../entry-answer.ts";

/** A phone's entries with room for long notes; more than this is not from our page. */
const BODY_LETTERS_MAX = 200_000;

/**
 * Public endpoint: trusts nothing it is handed. Applies entries in one commit and answers each by its
 * place: what stands after it, or why it cannot be kept. Sent twice, an entry counts once.
 */
export async function POST(request: Request): Promise<Response> {
  const batch = LogReactionsInput.safeParse(await readJson(request));
  if (!batch.success) return Response.json({ message: "These are no entries." }, { status: 400 });
  const parsed = batch.data.entries.map((entry) => LogReactionInput.safeParse(entry));
  const good = parsed.flatMap((one) => (one.success ? [one.data] : []));
  const outcomes = good.length === 0 ? [] : await logReactions(await requestContext(), good);
  let next = 0;
  const answers = parsed.map((one): EntryAnswer => {
    if (!one.success) {
      return {
        kind: "refused",
        message: one.error.issues[0]?.message ?? "This entry is not whole.",
      };
    }
    const outcome = outcomes[next++];
    if (!outcome) throw new Error("An entry has no outcome.");
    return outcome.ok
      ? { kind: "kept", cell: outcome.value }
      : { kind: "refused", message: describeLogProblem(outcome.problem) };
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
