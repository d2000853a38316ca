import { checkAllergens } from "./allergens/check-allergens.ts";
import { checkCrossContact } from "./allergens/check-cross-contact.ts";
import { checkBalance, type BalanceScheme } from "./balance/index.ts";
import type { BoxChild, BoxLunch } from "./box.ts";
import { checkRecall } from "./check-recall.ts";
import { checkSchool } from "./check-school.ts";
import { checkChoking } from "./choking/check-choking.ts";
import type { Finding } from "./finding.ts";
import { checkTemperature, type Journey } from "./heat/check-temperature.ts";
import type { SchoolRule } from "./school-rule.ts";

/** What a lunch is checked against, as it stands on its day. */
export type CheckGround = {
  readonly children: readonly BoxChild[];
  /** The rules that are switched on. */
  readonly rules: readonly SchoolRule[];
  /** How lunch travels; null: temperatures are not asked for. */
  readonly journey: Journey | null;
  /** By whose scheme amounts are counted. */
  readonly scheme: BalanceScheme;
};

/**
 * What speaks against a lunch, or is worth a look, in no order (`judgeFindings` sorts). An empty
 * answer says only that nothing on record speaks against it.
 */
export function checkLunch(
  lunch: BoxLunch,
  { children, rules, journey, scheme }: CheckGround,
): Finding[] {
  return [
    ...checkRecall(lunch),
    ...checkAllergens(lunch, children),
    ...checkCrossContact(lunch, children),
    ...checkChoking(lunch, children),
    ...checkSchool(lunch, rules),
    ...(journey === null ? [] : checkTemperature(lunch, children, journey)),
    ...checkBalance(lunch, scheme),
  ];
}
