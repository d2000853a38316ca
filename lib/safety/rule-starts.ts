import { UNLIMITED_RULE, type SchoolRule } from "./school-rule.ts";

/** A rule to start from; the school's own wording decides what it must say. */
export type RuleStart = { readonly id: string; readonly rule: SchoolRule };

/** Rules that many schools have in some form (common practice, no source): our suggestions, to be edited. */
export const RULE_STARTS: readonly RuleStart[] = [
  start("nuts", { name: "No nuts", traits: ["nuts"], allergens: ["tree-nut", "peanut"] }),
  start("fizzy", { name: "No fizzy drinks", traits: ["fizzy"] }),
  start("glass", { name: "No glass in the bag", traits: ["in-glass"] }),
  start("cans", { name: "No cans", traits: ["in-a-can"] }),
  start("sweets", { name: "No sweets", traits: ["sweets"] }),
  start("seeds", { name: "No seeds", traits: ["seeds"], allergens: ["sesame"] }),
  start("smell", { name: "Nothing with a strong smell", traits: ["strong-smell"] }),
  start("outing", {
    name: "Eaten by hand on outing days",
    traits: ["needs-spoon", "needs-fork"],
    weekdays: [5],
  }),
];

function start(id: string, rule: Partial<SchoolRule> & { readonly name: string }): RuleStart {
  return { id, rule: { ...UNLIMITED_RULE, ...rule } };
}
