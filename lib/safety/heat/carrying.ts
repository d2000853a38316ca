import { z } from "zod";
import { BAG_KINDS } from "./containers.ts";

const Celsius = z.number().min(-40).max(110);

/** One thermometer reading of a container with water in it. */
export const ReadingTaken = z.object({
  waterMl: z.number().min(50).max(5000),
  startC: Celsius,
  hours: z.number().positive().max(24),
  readC: Celsius,
  roomC: Celsius,
});

/**
 * How lunch is carried, as the user says it, with what is assumed until then: the two cold sources in a
 * soft insulated bag of USDA's advice of 13 August 2019 and hot food at its 165 °F (74 °C); the sizes are
 * common practice, no source.
 */
export const Carrying = z.object({
  bag: z.enum(BAG_KINDS).default("soft"),
  /** A reading of the bag; null: worked out from its kind. */
  bagReading: ReadingTaken.nullable().default(null),
  packs: z.number().int().min(0).max(6).default(2),
  packGrams: z.number().min(20).max(1000).default(200),
  /** The drink goes in frozen and counts as a cold source. */
  freezesDrink: z.boolean().default(false),
  /** The packed box stands in the fridge overnight. */
  isPrechilled: z.boolean().default(true),
  fridgeC: z.number().min(0).max(10).default(4),
  jarMl: z.number().min(100).max(2000).default(300),
  /** A reading of the jar; null: the least that the test standard asks of its size. */
  jarReading: ReadingTaken.nullable().default(null),
  isJarPreheated: z.boolean().default(true),
  /** Inner temperature of hot food as it goes in, °C. */
  fillC: z.number().min(50).max(100).default(74),
  /** Where the bag waits. */
  waits: z.enum(["indoors", "outdoors"]).default("indoors"),
  indoorC: z.number().min(5).max(40).default(21),
  /** Minutes from the lid to the door. */
  lidMinutes: z.number().int().min(0).max(180).default(15),
});
export type Carrying = z.infer<typeof Carrying>;

/** What is assumed until the user says otherwise. */
export const USUAL_CARRYING: Carrying = Carrying.parse({});
