import { z } from "zod";
import {
  Allergen,
  Appliance,
  Colour,
  FoodGroup,
  Form,
  Holding,
  Part,
  Pattern,
  Trait,
  TrickKind,
} from "./vocabulary.ts";

const Slug = z
  .string()
  .min(1)
  .max(120)
  .regex(/^[a-z0-9][a-z0-9-]*$/, { error: "Use small letters, digits and hyphens." });

/** Identifies a food: the slug of a reference food, or a made id for one the user added. */
export const FoodId = Slug.brand<"FoodId">();
export type FoodId = z.infer<typeof FoodId>;

/** A family: kin among foods (apple slices, applesauce and apple crisps are one family). */
export const FamilyId = Slug.brand<"FamilyId">();
export type FamilyId = z.infer<typeof FamilyId>;

const Days = z.number().int().min(0).max(3650).nullable();

/** Shelf lives in days; null where no source states one. The shorter of two sources is kept. */
export const ShelfLives = z.object({
  pantryDays: Days,
  pantryOpenedDays: Days,
  fridgeDays: Days,
  fridgeOpenedDays: Days,
  cutDays: Days,
  preparedDays: Days,
  freezerDays: Days,
});
export type ShelfLives = z.infer<typeof ShelfLives>;

/** One step of getting a food ready. Minutes are for one family batch. */
export const PrepStep = z.object({
  name: z.string().min(1).max(120),
  minutes: z
    .number()
    .min(0)
    .max(24 * 60),
  handsOn: z.boolean(),
  appliance: Appliance,
  /** Evening: may be done the night before. Morning: must wait till morning. */
  earliest: z.enum(["evening", "morning"]),
  /** Longest wait after this step ends until packing, in minutes; null when it keeps. */
  holdMinutesMax: z
    .number()
    .min(0)
    .max(7 * 24 * 60)
    .nullable(),
  /** Need not wait for the step before it: the flask warms while the soup does. */
  alongside: z.boolean().optional(),
});
export type PrepStep = z.infer<typeof PrepStep>;

/** A food of the larder: what it is, not where it is bought. */
export const Food = z.object({
  id: FoodId,
  name: z.string().min(1).max(120),
  aliases: z.array(z.string().min(1).max(120)),
  family: FamilyId,
  group: FoodGroup,
  parts: z.array(Part).min(1),
  allergens: z.array(Allergen),
  /** Found in some makes: "check the label". */
  maybeAllergens: z.array(Allergen),
  traits: z.array(Trait),
  colours: z.array(Colour),
  motifs: z.array(Slug),
  pattern: Pattern,
  form: Form,
  holding: Holding,
  /** Can carry a cutter shape. */
  sliceable: z.boolean(),
  /** Months 1–12 in season; null: all year. */
  seasonMonths: z.array(z.number().int().min(1).max(12)).nullable(),
  shelf: ShelfLives,
  /** Edible portion ÷ as purchased, by weight; above 1 where cooking adds water (oatmeal: 6). */
  yieldFactor: z.number().positive().max(8),
  /** Grams of one usual serving of a school child. */
  servingGrams: z.number().positive().max(2000),
  /** Grams of one cup (the exact US cup), where known. */
  gramsPerCup: z.number().positive().nullable(),
  /** Grams of one of a named unit: piece, slice, small, medium, pouch … */
  unitWeights: z.record(z.string(), z.number().positive()),
  /** What one of it is called when counted: "clementine", "slice"; null when it is not counted. */
  countUnit: z.string().nullable(),
  /** Typical price of a serving in cents of the user's money; a starting guess. */
  servingCents: z.number().int().min(0),
  prepSteps: z.array(PrepStep),
  /** Days before it should appear again; null: the family's or the series' rule. */
  restDays: z.number().int().min(0).max(366).nullable(),
  /** Staples are exempt from repeat rules (water, a house dip). */
  isStaple: z.boolean(),
});
export type Food = z.infer<typeof Food>;

/** A presentation: a cut, a cutter shape, a pick, a container, a garnish. */
export const Trick = z.object({
  id: Slug.brand<"TrickId">(),
  name: z.string().min(1).max(120),
  kind: TrickKind,
  motifs: z.array(Slug),
  colours: z.array(Colour),
  /** Hands-on minutes it adds to a family batch. */
  minutes: z.number().min(0).max(120),
  /** Only foods that can be sliced can carry it. */
  needsSliceable: z.boolean(),
});
export type Trick = z.infer<typeof Trick>;
export type TrickId = Trick["id"];
