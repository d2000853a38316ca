import type { MiseStep } from "#lib/use-cases/load-mise.ts";

/** What stands under a step: how long, who and where, how much later it may begin, and on what that rests. */
export function stepNotes(
  step: Pick<MiseStep, "minutes" | "appliance" | "cook" | "slack" | "isCritical" | "recordings">,
  { cooks, part }: { readonly cooks: number; readonly part: "evening" | "morning" },
): string {
  const where = step.appliance === "none" ? "" : `, ${step.appliance.replace("-", " ")}`;
  const who = step.cook === null ? "by itself" : cooks > 1 ? `cook ${step.cook + 1}` : "hands on";
  const basis =
    step.recordings === 0
      ? "usual time"
      : `from ${step.recordings} ${step.recordings === 1 ? "record" : "records"}`;
  return `${step.minutes} min ${who}${where}; ${slackWords(step, part)}; ${basis}`;
}

/** A critical step decides when its part of the day is over; the whole of that may still begin later. */
function slackWords(
  { slack, isCritical }: Pick<MiseStep, "slack" | "isCritical">,
  part: "evening" | "morning",
): string {
  const later = slack === 0 ? "no slack" : `may begin up to ${slack} min later`;
  if (!isCritical) return later;
  return slack === 0 ? "critical, no slack" : `critical within the ${part}, which ${later}`;
}
