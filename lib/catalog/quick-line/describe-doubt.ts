import { describeWeighProblem } from "../quantity/describe-quantity.ts";
import type { QuickDoubt } from "./parse-quick-line.ts";

/** What to look at before an item of a typed lunch is taken, in one sentence. */
export function describeDoubt(doubt: QuickDoubt): string {
  switch (doubt.kind) {
    case "no-food":
      return "No food of the Larder goes by that name. Choose one, or leave it out.";
    case "spelling":
      return `Read as “${doubt.matched}”.`;
    case "several-foods":
      return `It may also be ${doubt.others.join(", ")}.`;
    case "no-amount":
      return "No amount was typed, so it is one serving.";
    case "about":
      return "“About” is taken as the amount itself.";
    case "range":
      return "A range was typed; its middle is taken.";
    case "not-weighed":
      return describeWeighProblem(doubt.problem);
  }
}
