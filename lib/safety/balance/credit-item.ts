import { LABEL_CUP_ML, type Food } from "#lib/catalog/index.ts";
import {
  creditingKindOf,
  type GrainGroup,
  type MeatKind,
  type VegetableSubgroup,
} from "./crediting-kind.ts";

export const COMPONENTS = ["fruit", "vegetable", "grain", "meat", "milk"] as const;
export type Component = (typeof COMPONENTS)[number];

/** What one food counts for: cups of fruit, vegetable and milk, ounce equivalents of grain and meat. */
type Credit = {
  readonly component: Component;
  readonly amount: number;
  readonly subgroup: VegetableSubgroup | null;
  readonly isJuice: boolean;
  /** Ounce equivalents it counts for as a meat alternate instead, never as well; null: it cannot. */
  readonly insteadMeat: number | null;
};
export type Credited =
  | { readonly kind: "counted"; readonly credit: Credit }
  | { readonly kind: "not-counted"; readonly why: "nothing" | "unread" | "no-cup-weight" };

/** Smallest creditable steps: ⅛ cup and ¼ oz eq (7 CFR 210.10; state crediting handouts). Always down. */
const CUP_STEP = 1 / 8;
const OUNCE_STEP = 1 / 4;

/**
 * Grams of one ounce equivalent of grain: USDA Exhibit A, groups A to D; ready-to-eat cereal 28 g
 * (California DSS). Cooked grains go by ½ cup.
 */
const GRAIN_GRAMS: Readonly<Record<Exclude<GrainGroup, "cooked">, number>> = {
  ...{ A: 22, B: 28, C: 34, D: 55 },
  cereal: 28,
};

/**
 * Grams of one ounce equivalent of meat or alternate at school, ounces to the gram. Connecticut SDE
 * crediting page: cheese 1 oz, soft cheese 2 oz, half a large egg (25 g), nut butter 2 tbsp (1.1 oz), nuts
 * 1 oz, yogurt 4 oz, tofu 2.2 oz, tempeh 1 oz, surimi 3 oz; cooked meat 1 oz (USDA Food Buying Guide).
 */
const SCHOOL_MEAT_GRAMS: Readonly<Record<MeatKind, number>> = {
  ...{ meat: 28, cheese: 28, "soft-cheese": 56, egg: 25, "nut-butter": 31, nuts: 28 },
  ...{ yogurt: 113, tofu: 62, tempeh: 28, surimi: 85 },
};

/** What a portion counts for by the US school crediting rules, rounded down; it never counts for less when it is larger. */
export function creditAtSchool(food: Food, grams: number): Credited {
  const kind = creditingKindOf(food);
  switch (kind.kind) {
    case "none":
      return { kind: "not-counted", why: "nothing" };
    case "unread":
      return { kind: "not-counted", why: "unread" };
    case "meat":
      return counted("meat", down(grams / SCHOOL_MEAT_GRAMS[kind.meat], OUNCE_STEP));
    case "grain":
      return grainCredit(food, grams, kind.group);
    case "milk":
      return byCup(food, grams, "milk", 1, {});
    case "fruit":
      // Dried fruit counts double (CDE table note b); juice as its volume, limited in the week.
      return byCup(food, grams, "fruit", kind.state === "dried" ? 2 : 1, {
        isJuice: kind.state === "juice",
      });
    case "vegetable":
      // Raw leafy greens count half (CDE table note b).
      return byCup(food, grams, "vegetable", kind.isLeafy ? 0.5 : 1, { subgroup: kind.subgroup });
  }
}

function grainCredit(food: Food, grams: number, group: GrainGroup): Credited {
  if (group !== "cooked") return counted("grain", down(grams / GRAIN_GRAMS[group], OUNCE_STEP));
  if (food.gramsPerCup === null) return { kind: "not-counted", why: "no-cup-weight" };
  // ½ cup cooked is one ounce equivalent (California DSS).
  return counted("grain", down((2 * grams) / food.gramsPerCup, OUNCE_STEP));
}

function byCup(
  food: Food,
  grams: number,
  component: Component,
  factor: number,
  more: { readonly isJuice?: boolean; readonly subgroup?: VegetableSubgroup },
): Credited {
  const perCup = food.gramsPerCup ?? (component === "milk" ? LABEL_CUP_ML : null);
  if (perCup === null) return { kind: "not-counted", why: "no-cup-weight" };
  const cups = grams / perCup;
  // ¼ cup of cooked beans is one ounce equivalent of meat alternate instead (Connecticut SDE).
  const insteadMeat = more.subgroup === "beans" ? down(4 * cups, OUNCE_STEP) : null;
  return counted(component, down(cups * factor, CUP_STEP), { ...more, insteadMeat });
}

function counted(
  component: Component,
  amount: number,
  more: Partial<Pick<Credit, "isJuice" | "subgroup" | "insteadMeat">> = {},
): Credited {
  const credit = { component, amount, subgroup: null, isJuice: false, insteadMeat: null, ...more };
  return { kind: "counted", credit };
}

/** The next step at or below; a measure that lies on a step up to rounding counts as on it. */
function down(amount: number, step: number): number {
  return Math.floor(amount / step + 1e-9) * step;
}
