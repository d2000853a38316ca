import { requestContext } from "#app/_server/context.ts";
import { KeepDayFactsInput } from "#lib/use-cases/keep-day-facts.input.ts";
import { describeFactsProblem, keepDayFacts } from "#lib/use-cases/keep-day-facts.ts";
import { answerEach } from "../answer-each.ts";

/**
 * Public endpoint: trusts nothing it is handed. Applies facts of days in one commit. Sent twice, an
 * entry counts once.
 */
export async function POST(request: Request): Promise<Response> {
  const context = await requestContext();
  return answerEach(
    request,
    KeepDayFactsInput,
    (good) => keepDayFacts(context, good),
    describeFactsProblem,
  );
}
