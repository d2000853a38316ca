import type { Food } from "#lib/catalog/index.ts";

/** Subgroups of vegetables that the school pattern asks for in a week. */
export const VEGETABLE_SUBGROUPS = [
  "dark-green",
  "red-orange",
  "beans",
  "starchy",
  "other",
] as const;
export type VegetableSubgroup = (typeof VEGETABLE_SUBGROUPS)[number];

/** Grains by USDA Exhibit A, cooked grains by the half cup, and ready-to-eat cereal by weight. */
export type GrainGroup = "A" | "B" | "C" | "D" | "cooked" | "cereal";

/** Foods that count as a meat or meat alternate, by the rule they follow. */
export type MeatKind =
  | "meat"
  | "cheese"
  | "soft-cheese"
  | "egg"
  | "nut-butter"
  | "nuts"
  | "yogurt"
  | "tofu"
  | "tempeh"
  | "surimi";

/** What a food counts as; `unread`: only its recipe or maker's statement can say; `none`: nothing. */
export type CreditingKind =
  | { readonly kind: "fruit"; readonly state: "plain" | "dried" | "juice" }
  | { readonly kind: "vegetable"; readonly subgroup: VegetableSubgroup; readonly isLeafy: boolean }
  | { readonly kind: "grain"; readonly group: GrainGroup }
  | { readonly kind: "meat"; readonly meat: MeatKind }
  | { readonly kind: "milk" | "unread" | "none" };

type Asked = Pick<Food, "id" | "family" | "group" | "form" | "holding" | "parts">;

/** 100 % juices; a carton of mixed juice says on its label whether it is one. */
const JUICES: ReadonlySet<string> = new Set(["apple-juice", "orange-juice", "grape-juice"]);
const MILKS: ReadonlySet<string> = new Set(
  "milk whole-milk skim-milk chocolate-milk lactose-free-milk shelf-stable-milk-box".split(" "),
);

/** Mixed dishes and bought preparations: they count by what is in them (USDA crediting practice, from memory). */
const UNREAD: ReadonlySet<string> = new Set(
  (
    "juice-box vegetable-juice fruit-smoothie vegetable-soup tomato-soup coleslaw potato-salad pasta-salad " +
    "tabbouleh fried-rice macaroni-and-cheese bean-burrito cheese-pizza-slice chicken-noodle-soup " +
    "split-pea-soup quiche egg-salad deviled-egg chicken-salad tuna-salad meatballs baked-beans refried-beans " +
    "hummus bean-dip guacamole eggplant-dip soy-milk soy-nut-butter veggie-burger meatless-nuggets trail-mix snack-mix"
  ).split(" "),
);
const UNREAD_FAMILIES: ReadonlySet<string> = new Set(
  "filled-pasta cold-cuts sausage breaded-chicken breaded-fish plant-patty jerky bacon plant-cheese".split(
    " ",
  ),
);
/** Condiments and garnish count as nothing (from memory). */
const NOTHING: ReadonlySet<string> = new Set(["ketchup", "shredded-coconut", "coconut-water"]);

const GRAINS: Readonly<Record<string, GrainGroup>> = {
  ...{ cracker: "A", pretzel: "A", crisps: "A" },
  ...{ "sandwich-bread": "B", flatbread: "B", "bread-roll": "B", bagel: "B", tortilla: "B" },
  "sweet-cracker": "B",
  ...{ cornbread: "C", croissant: "C", pancake: "C" },
  muffin: "D",
  ...{ pasta: "cooked", noodles: "cooked", rice: "cooked", couscous: "cooked" },
  ...{ bulgur: "cooked", quinoa: "cooked", barley: "cooked", oats: "cooked" },
  cereal: "cereal",
};
/** Foods whose group differs from their family's: Exhibit A names them one by one. */
const OWN_GRAIN: Readonly<Record<string, GrainGroup>> = {
  ...{ croutons: "A", breadsticks: "A", "tortilla-chips": "B", "soft-pretzel": "B" },
  ...{ "granola-bar": "D", granola: "cereal" },
};

/** By USDA's vegetable subgroups (lists from memory); what is not named is "other". */
const SUBGROUPS: Readonly<Record<string, VegetableSubgroup>> = {
  ...{ broccoli: "dark-green", "salad-leaves": "dark-green" },
  ...{ carrot: "red-orange", tomato: "red-orange", "sweet-pepper": "red-orange" },
  ...{ squash: "red-orange", "sweet-potato": "red-orange" },
  ...{ beans: "beans", chickpea: "beans", lentil: "beans", soybean: "beans" },
  ...{ corn: "starchy", pea: "starchy", potato: "starchy", parsnip: "starchy" },
  ...{ jicama: "starchy", "water-chestnut": "starchy" },
};
const OWN_SUBGROUP: Readonly<Record<string, VegetableSubgroup>> = {
  ...{ "bok-choy": "dark-green", lettuce: "other", "green-bell-pepper": "other" },
  ...{ "snap-peas": "other", "baby-corn": "other" },
};

const MEATS: Readonly<Record<string, MeatKind>> = {
  ...{ "hard-cheese": "cheese", "mild-cheese": "cheese", "salty-cheese": "cheese" },
  ...{ "soft-cheese": "soft-cheese", egg: "egg", yogurt: "yogurt", surimi: "surimi" },
  ...{ chicken: "meat", turkey: "meat", beef: "meat", pork: "meat", "minced-meat": "meat" },
  ...{ tuna: "meat", salmon: "meat", sardine: "meat" },
};
const OWN_MEAT: Readonly<Record<string, MeatKind>> = {
  ...{ tofu: "tofu", tempeh: "tempeh", shrimp: "meat" },
};

/** What a food counts as under the crediting rules; a food of the user's own goes by family and group. */
export function creditingKindOf(food: Asked): CreditingKind {
  const { id, family, group } = food;
  if (NOTHING.has(id)) return { kind: "none" };
  if (UNREAD.has(id) || UNREAD_FAMILIES.has(family)) return { kind: "unread" };
  if (MILKS.has(id)) return { kind: "milk" };
  if (JUICES.has(id)) return { kind: "fruit", state: "juice" };
  const meat = OWN_MEAT[id] ?? meatByShape(food) ?? MEATS[family];
  if (meat && group !== "treat" && id !== "cream-cheese") return { kind: "meat", meat };
  if (SUBGROUPS[family] === "beans") return vegetable("beans", food);
  const grain = OWN_GRAIN[id] ?? (group === "grain" ? GRAINS[family] : undefined);
  if (grain) return { kind: "grain", group: grain };
  if (group === "fruit")
    return { kind: "fruit", state: food.form === "dried-sticky" ? "dried" : "plain" };
  if (group === "vegetable")
    return vegetable(OWN_SUBGROUP[id] ?? SUBGROUPS[family] ?? "other", food);
  return { kind: "none" };
}

function vegetable(subgroup: VegetableSubgroup, { family }: Asked): CreditingKind {
  return { kind: "vegetable", subgroup, isLeafy: family === "salad-leaves" };
}

function meatByShape({ form, group }: Asked): MeatKind | undefined {
  if (group !== "protein") return undefined;
  if (form === "whole-nut") return "nuts";
  return form === "spoon-butter" ? "nut-butter" : undefined;
}
