import type { Day } from "#lib/calendar/index.ts";
import type { Context } from "#lib/use-cases/context.ts";
import { changeProposal } from "#lib/use-cases/proposal/change-proposal.ts";

/** A month proposed and taken as it comes. */
export async function proposeMonth(
  context: Context,
  { month }: { readonly month: Day },
): ReturnType<typeof changeProposal> {
  const sliders = {};
  const proposed = await changeProposal(context, {
    step: "propose",
    month,
    scope: "rest",
    sliders,
  });
  return proposed.ok ? changeProposal(context, { step: "take", month }) : proposed;
}
