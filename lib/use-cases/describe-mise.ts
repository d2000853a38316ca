import { clockTime } from "#lib/calendar/index.ts";
import type { KitchenPlan, KitchenStep, Proven, Sacrifice, WayOut } from "#lib/kitchen/index.ts";

/** A step in one line: "Slice cucumber slices" reads badly, so the food leads. */
export function describeStep(step: Pick<KitchenStep, "name" | "about" | "kind">): string {
  return step.kind === "pack" ? `${step.name}` : `${capital(step.about)}: ${small(step.name)}`;
}

/** What is proven of the latest time to begin. */
export function describeProof({ at, bound, isProven }: Proven, steps: number): string {
  if (steps === 0) return "Nothing to do in the morning.";
  return isProven
    ? `${clockTime(at)} is proven: no order of these ${steps === 1 ? "steps" : `${steps} steps`} begins later.`
    : `${clockTime(at)} is the latest found; proven is that none begins after ${clockTime(bound)}.`;
}

/** What does not work out as asked: holds that must give way, appliances that are not there, a morning too long. */
export function describeTroubles(
  plan: KitchenPlan,
  steps: readonly KitchenStep[],
  { morningFrom, hasBegun }: { readonly morningFrom: number; readonly hasBegun: boolean },
): string[] {
  const byId = new Map(steps.map((step) => [step.id, step]));
  const holds = plan.looseHolds.flatMap(({ stepId, extraMinutes }) => {
    const step = byId.get(stepId);
    if (!step) return [];
    return [
      `${describeStep(step)} waits ${minutes(extraMinutes)} longer than its limit of ` +
        `${minutes(step.holdMinutesMax ?? 0)} before the packing: no order keeps every limit. ` +
        `Check its temperature before the lid shuts.`,
    ];
  });
  const missing = plan.missing.map(
    (appliance) =>
      `A step needs the ${appliance.replace("-", " ")}, and the series bible says there is none.`,
  );
  const late =
    plan.lateBy === 0
      ? []
      : hasBegun
        ? [`${minutes(plan.lateBy)} late: even the quickest order ends after the departure.`]
        : [
            `The morning asks for ${clockTime(plan.getUp.at)}, ${minutes(plan.lateBy)} before the ` +
              `kitchen opens at ${clockTime(morningFrom)}.`,
          ];
  return [...late, ...holds, ...missing];
}

/** What to let go: "Leave out the star cutter on the cucumber; pack off camera." */
function describeSacrifices(go: readonly Sacrifice[], steps: readonly KitchenStep[]): string {
  const words = go.map((one) => {
    switch (one.kind) {
      case "trick": {
        const step = steps.find(({ id }) => id === one.stepId);
        return step ? `do not ${small(step.name)} (${step.about})` : "leave out a trick";
      }
      case "plain-pack":
        return "pack off camera, film the full tin only";
      case "swap": {
        const step = steps.find(({ foodId }) => foodId === one.foodId);
        return `swap the ${step?.about ?? "food"} for something ready to pack`;
      }
    }
  });
  return capital(words.join("; "));
}

/** What to do when so many minutes late, and what it wins; a second sentence where it is not enough. */
export function describeWayOut(
  late: number,
  way: WayOut | undefined,
  steps: readonly KitchenStep[],
): string {
  if (!way) return "Nothing can be left out: go as you are.";
  const what = `${describeSacrifices(way.go, steps)}. Saves ${minutes(way.minutes)}`;
  return way.minutes >= late ? `${what}.` : `${what}; three changes save no more.`;
}

/** "1 minute", "5 minutes", "1 h 30 min". */
function minutes(count: number): string {
  if (count >= 60)
    return count % 60 === 0 ? `${count / 60} h` : `${Math.floor(count / 60)} h ${count % 60} min`;
  return count === 1 ? "1 minute" : `${count} minutes`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function small(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
