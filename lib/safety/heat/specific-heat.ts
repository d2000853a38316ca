import type { Food } from "#lib/catalog/index.ts";

/** kJ/(kg K): teaching pages, as in most textbooks. */
export const WATER_KJ = 4.186;
/** kJ/(kg K), below 0 °C: same. */
export const ICE_KJ = 2.05;
/** kJ/kg: Case Western teaching demonstration; Boston University prints 333, Earle 335. */
export const LATENT_KJ = 334;

/**
 * kJ/(kg K) above freezing, by family. Earle, Unit Operations in Food Processing, App. 7 (from ASHRAE);
 * ASHRAE Refrigeration ch. 9 Table 3 for broccoli, celery and cucumber; Geankoplis App. A.4-1 for
 * poultry, cheese, butter, sausage and white bread. Where two differ the lower is followed (carrot 3.60,
 * not 3.92; bread 2.72, not 2.93): it warms and cools sooner, so the check errs to the careful side.
 */
const BY_FAMILY: Readonly<Record<string, number>> = {
  ...{ apple: 3.6, banana: 3.35, peach: 3.78, melon: 4.06 },
  ...{ carrot: 3.6, "green-bean": 3.81, tomato: 3.98, corn: 3.35, pea: 3.31 },
  ...{ broccoli: 4.01, celery: 4.07, cucumber: 4.09 },
  ...{ beef: 3.22, "minced-meat": 3.22, pork: 2.85, "cold-cuts": 2.85, bacon: 2.85 },
  ...{ salmon: 3.18, tuna: 3.18, sardine: 3.18, "breaded-fish": 3.18, surimi: 3.18 },
  ...{ egg: 3.2, chicken: 3.31, turkey: 3.31, "breaded-chicken": 3.31, sausage: 3.6 },
  ...{ "hard-cheese": 2.68, "mild-cheese": 2.68, "salty-cheese": 2.68, butter: 2.3 },
  ...{ "sandwich-bread": 2.72, "bread-roll": 2.72, flatbread: 2.72, bagel: 2.72 },
};

/**
 * By group where the family is not listed: fruit as apple, vegetables as carrot, protein as pork (the
 * lowest meat), grain as white bread, the rest from memory and low for the same reason.
 */
const BY_GROUP: Readonly<Record<Food["group"], number>> = {
  ...{ fruit: 3.6, vegetable: 3.6, protein: 2.85, grain: 2.72 },
  ...{ dairy: 3.2, fat: 2.3, treat: 1.9, drink: 3.9 },
};
/** Milk, Earle App. 7; soups and drinks are close to it. */
const LIQUID_KJ = 3.9;

/** Specific heat of a food above freezing, kJ/(kg K); a rough value where nothing is published. */
export function specificHeatOf(food: Pick<Food, "family" | "group" | "parts" | "traits">): number {
  const isLiquid =
    food.parts.includes("drink") ||
    (food.traits.includes("needs-spoon") && food.traits.includes("served-warm"));
  if (isLiquid) return LIQUID_KJ;
  return BY_FAMILY[food.family] ?? BY_GROUP[food.group];
}
