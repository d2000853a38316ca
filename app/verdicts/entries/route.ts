import { requestContext } from "#app/_server/context.ts";
import { LogReactionInput } from "#lib/use-cases/log-reaction.input.ts";
import { describeLogProblem, logReactions } from "#lib/use-cases/log-reaction.ts";
import { answerEach } from "../answer-each.ts";

/**
 * Public endpoint: trusts nothing it is handed. Applies verdicts in one commit. Sent twice, an entry
 * counts once.
 */
export async function POST(request: Request): Promise<Response> {
  const context = await requestContext();
  return answerEach(
    request,
    LogReactionInput,
    (good) => logReactions(context, good),
    describeLogProblem,
  );
}
