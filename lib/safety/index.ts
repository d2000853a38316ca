/** Safety: what speaks against a food for these children on this day. It warns, it never promises. */
export type { Avoidance, ChildProfile, Severity } from "./child.ts";
export { ruleHolds, ruleNames, SchoolRule } from "./school-rule.ts";
export { hardFilter, isAllowed } from "./is-allowed.ts";
