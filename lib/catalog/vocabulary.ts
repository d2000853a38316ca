import { z } from "zod";

/**
 * Allergen tags. They cover the US major nine (FALCPA 2004, FASTER Act 2021) and the EU fourteen
 * (Reg. (EU) 1169/2011 Annex II); coconut is kept as a tag of its own since the US list dropped it
 * from the tree nuts (FDA Q&A Guidance, Edition 5, January 2025).
 */
export const ALLERGENS = [
  "milk",
  "egg",
  "fish",
  "crustacean",
  "mollusc",
  "tree-nut",
  "peanut",
  "wheat",
  "rye",
  "barley",
  "oats",
  "soy",
  "sesame",
  "celery",
  "mustard",
  "sulphites",
  "lupin",
  "coconut",
] as const;
export const Allergen = z.enum(ALLERGENS);
export type Allergen = z.infer<typeof Allergen>;

/** What a food is made of mostly, as food guides group it. */
export const FOOD_GROUPS = [
  "fruit",
  "vegetable",
  "grain",
  "protein",
  "dairy",
  "fat",
  "treat",
  "drink",
] as const;
export const FoodGroup = z.enum(FOOD_GROUPS);
export type FoodGroup = z.infer<typeof FoodGroup>;

/** An item's place in a lunch. */
export const PARTS = [
  "main",
  "protein",
  "grain",
  "vegetable",
  "fruit",
  "dairy",
  "dip",
  "treat",
  "drink",
  "extra",
] as const;
export const Part = z.enum(PARTS);
export type Part = z.infer<typeof Part>;

/** Properties that school rules and checks ask about. */
export const TRAITS = [
  "nuts",
  "seeds",
  "fizzy",
  "in-a-can",
  "in-glass",
  "sweets",
  "sticky",
  "melts",
  "messy",
  "needs-spoon",
  "needs-fork",
  "served-warm",
  "shop-bought",
  "strong-smell",
  "browns-when-cut",
  "crushes",
] as const;
export const Trait = z.enum(TRAITS);
export type Trait = z.infer<typeof Trait>;

/** How a food must be kept between packing and eating. */
export const HOLDINGS = ["cold", "hot", "either", "none"] as const;
export const Holding = z.enum(HOLDINGS);
export type Holding = z.infer<typeof Holding>;

/** Colours as a child would name them; the tints of the drawn tray follow them. */
export const COLOURS = [
  "red",
  "orange",
  "yellow",
  "green",
  "blue",
  "purple",
  "pink",
  "white",
  "cream",
  "brown",
  "black",
] as const;
export const Colour = z.enum(COLOURS);
export type Colour = z.infer<typeof Colour>;

/** The drawn pattern of a food in the tray. */
export const PATTERNS = [
  "discs",
  "sticks",
  "wedges",
  "dots",
  "grains",
  "waves",
  "leaves",
  "shells",
  "squares",
  "crumbs",
  "rings",
  "rounds",
  "speckle",
  "yolk",
  "plain",
] as const;
export const Pattern = z.enum(PATTERNS);
export type Pattern = z.infer<typeof Pattern>;

/** The physical form that choking guidance asks about. */
export const FORMS = [
  "round-firm",
  "cylinder",
  "hard-raw",
  "chunk",
  "whole-nut",
  "spoon-butter",
  "popped",
  "dried-sticky",
  "hard-sweet",
  "bone-in",
  "soft",
] as const;
export const Form = z.enum(FORMS);
export type Form = z.infer<typeof Form>;

/** Trick: a presentation. */
export const TRICK_KINDS = ["cut", "cutter", "pick", "container", "garnish"] as const;
export const TrickKind = z.enum(TRICK_KINDS);
export type TrickKind = z.infer<typeof TrickKind>;

/** Where a step of the prep happens. */
export const APPLIANCES = [
  "none",
  "oven",
  "hob",
  "toaster",
  "kettle",
  "microwave",
  "pressure-cooker",
  "blender",
  "freezer",
  "fridge",
] as const;
export const Appliance = z.enum(APPLIANCES);
export type Appliance = z.infer<typeof Appliance>;
