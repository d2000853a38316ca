"use server";

import { invalid, refused, type FormState } from "#app/_forms/form-state.ts";
import { requestContext } from "#app/_server/context.ts";
import { photosFolder } from "#app/_server/places.ts";
import { describeDemoProblem, loadDemo } from "#lib/use-cases/load-demo.ts";
import { clearingPhotoFiles } from "#lib/use-cases/photos/photo-files.ts";
import { describeStartProblem, startSeries } from "#lib/use-cases/start-series.ts";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";
import { tinHarbour } from "#seed/demo/index.ts";
import { referenceThemes } from "#seed/index.ts";

/** Public endpoint: trusts nothing it is handed. */
export async function startSeriesAction(input: unknown): Promise<FormState> {
  const parsed = StartSeriesInput.safeParse(input);
  if (!parsed.success) return invalid(parsed.error);
  const context = await requestContext();
  const outcome = await clearingPhotoFiles(context, photosFolder(), () =>
    startSeries(context, parsed.data),
  );
  if (!outcome.ok) return refused(describeStartProblem(outcome.problem));
  return { kind: "saved", href: "/slate" };
}

/** Loads the invented series; takes no input. */
export async function loadDemoAction(): Promise<FormState> {
  const context = await requestContext();
  const outcome = await clearingPhotoFiles(context, photosFolder(), () =>
    loadDemo(context, tinHarbour, referenceThemes()),
  );
  if (!outcome.ok) return refused(describeDemoProblem(outcome.problem));
  return { kind: "saved", href: "/slate" };
}
