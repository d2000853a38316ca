import { refresh } from "next/cache";
import type { z } from "zod";
import { invalid, refused, saved, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import type { Result } from "#lib/base/index.ts";
import { describeSheetProblem, type SheetProblem } from "#lib/use-cases/bible/sheet-problem.ts";
import type { Context } from "#lib/use-cases/context.ts";

/**
 * Parses what a form of the bible sent, hands it to its use case and answers in words: a refusal that
 * belongs to a field comes to stand beside it. `href` is where a saved form goes; none: it stays.
 */
export async function answerSheet<Input>(
  schema: z.ZodType<Input>,
  input: unknown,
  act: (context: Context, parsed: Input) => Promise<Result<unknown, SheetProblem>>,
  href?: string,
): Promise<FormState> {
  const parsed = schema.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const outcome = await act(await requestContext(), parsed.data);
  if (!outcome.ok) {
    const message = describeSheetProblem(outcome.problem);
    const { field } = outcome.problem;
    return field === undefined
      ? refused(message)
      : { kind: "invalid", fields: { [field]: message } };
  }
  refresh();
  return href === undefined ? saved : { kind: "saved", href };
}
