import type { Check, GuardGround, OwnSentence } from "./check.ts";
import { checkClaims, checkRecords, checkScrapped } from "./claims.ts";
import { checkDates } from "./dates.ts";
import { checkDisclosure } from "./disclosure.ts";
import { checkLengths, checkLinks } from "./lengths.ts";
import { checkNames, checkPlaces } from "./private.ts";
import { checkSurprise } from "./surprise.ts";
import { checkChapters, checkScreen } from "./times.ts";

/** Every guard of a text, in the order they are shown. */
export function checksOf(lines: readonly (readonly OwnSentence[])[], ground: GuardGround): Check[] {
  return [
    checkClaims(lines, ground),
    checkDisclosure(lines, ground),
    checkNames(lines, ground),
    checkSurprise(lines, ground),
    checkPlaces(lines, ground),
    checkScrapped(lines, ground),
    checkRecords(lines, ground),
    checkDates(lines, ground),
    checkLengths(lines, ground),
    checkLinks(lines),
    ...(ground.times === null ? [] : [checkChapters(lines, ground), checkScreen(ground)]),
  ];
}

/** Findings that still hold a copy back: those that break a rule, and those nobody decided to keep. */
export function openFindings(checks: readonly Check[], kept: ReadonlySet<string>): number {
  return checks
    .flatMap((check) => check.findings.map((finding) => ({ check, finding })))
    .filter(({ check, finding }) => check.level === "stop" || !kept.has(finding.key)).length;
}
