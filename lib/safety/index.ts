/** Safety: what speaks against a food for these children on this day. It warns, it never promises. */
export { Severity, type Avoidance, type ChildProfile } from "./child.ts";
export { ruleHolds, ruleNames, SchoolRule, UNLIMITED_RULE } from "./school-rule.ts";
export { RULE_STARTS, type RuleStart } from "./rule-starts.ts";
export { givesAway, holdsPhrase } from "./names.ts";
export { hardFilter, isAllowed } from "./is-allowed.ts";
