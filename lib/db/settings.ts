import { z } from "zod";
import { ClockTime, isTimeZone } from "#lib/calendar/index.ts";
import { BALANCE_SCHEMES, Carrying } from "#lib/safety/index.ts";
import { DEFAULT_REST_DAYS } from "#lib/repeats/index.ts";
import type { Db } from "./client.ts";

/** Settings of the series, with what holds until the user says otherwise (common practice, no source). */
export const Settings = z.object({
  /** ISO weekdays with a packed lunch. */
  schoolDays: z.array(z.number().int().min(1).max(7)).default([1, 2, 3, 4, 5]),
  /** The door closes behind them. */
  departure: ClockTime.default("07:50" as ClockTime),
  /** Earliest the kitchen may be used in the morning. */
  morningFrom: ClockTime.default("06:00" as ClockTime),
  eveningFrom: ClockTime.default("19:00" as ClockTime),
  bedtime: ClockTime.default("22:00" as ClockTime),
  lunchAt: ClockTime.default("12:15" as ClockTime),
  verdictAt: ClockTime.default("15:45" as ClockTime),
  cooks: z.number().int().min(1).max(4).default(1),
  appliances: z
    .record(z.string(), z.number().int().min(0).max(6))
    .default({ oven: 1, hob: 2, toaster: 1, kettle: 1, microwave: 1, blender: 1 }),
  currency: z.string().max(8).default("€"),
  weekBudgetCents: z.number().int().min(0).nullable().default(null),
  /** Hands-on minutes there are on a school morning. */
  morningMinutes: z.number().int().min(1).max(240).default(30),
  wordsPerMinute: z.number().int().min(80).max(260).default(150),
  signOn: z.string().max(300).default(""),
  signOff: z.string().max(300).default(""),
  housePhrases: z.array(z.string().max(200)).default([]),
  tone: z.enum(["warm", "plain", "playful"]).default("warm"),
  emoji: z.boolean().default(false),
  /** Words that never leave: the school, the street, the town. */
  privateWords: z.array(z.string().max(120)).default([]),
  /** What the user noted about local law on children on screen; theirs alone, never legal advice. */
  lawNote: z.string().max(4000).default(""),
  /** Letters the user's channel takes, and those seen before a reader unfolds the rest. */
  titleMax: z.number().int().min(10).max(500).default(100),
  descriptionMax: z.number().int().min(100).max(20_000).default(5000),
  firstLinesMax: z.number().int().min(20).max(1000).default(150),
  themeRestDays: z.number().int().min(0).max(730).default(180),
  foodRestDays: z.number().int().min(0).max(365).default(DEFAULT_REST_DAYS.food),
  familyRestDays: z.number().int().min(0).max(365).default(DEFAULT_REST_DAYS.family),
  productRestDays: z.number().int().min(0).max(365).default(DEFAULT_REST_DAYS.product),
  trickRestDays: z.number().int().min(0).max(365).default(DEFAULT_REST_DAYS.trick),
  newFoodsPerLunchMax: z.number().int().min(0).max(5).default(1),
  newFoodsPerWeekMax: z.number().int().min(0).max(10).default(2),
  wantsDiscoveries: z.boolean().default(true),
  balanceScheme: z.enum(BALANCE_SCHEMES).default("off"),
  allergenList: z.enum(["us", "eu", "both"]).default("both"),
  runningFeatures: z.array(z.string().max(200)).default([]),
  gear: z.string().max(2000).default(""),
  /** Monthly mean outdoor temperature, °C, January first; null: not said. */
  climateC: z.array(z.number().min(-40).max(50)).length(12).nullable().default(null),
  /** The kitchen's zone in the IANA time zone database; null: that of the machine. */
  timeZone: z
    .string()
    .refine(isTimeZone, { error: "This is not a time zone. Use one like Europe/Oslo." })
    .nullable()
    .default(null),
  /** How lunch is carried to school; null: not said, the usual is assumed. */
  carrying: Carrying.nullable().default(null),
  /** Foods that the user buys at one shop only, whatever other shops sell. */
  onlyAt: z.array(z.object({ foodId: z.string(), shopId: z.string() })).default([]),
  isWelcomed: z.boolean().default(false),
});
export type Settings = z.infer<typeof Settings>;

/** The settings as they stand, defaults filled in. */
export async function readSettings(db: Db): Promise<Settings> {
  const rows = await db.setting.findMany();
  const values = Object.fromEntries(
    rows.map((row) => [row.key, JSON.parse(row.valueJson) as unknown]),
  );
  return Settings.parse(values);
}

/** Saves the named settings and leaves the others alone. */
export async function writeSettings(db: Db, changes: Partial<Settings>): Promise<void> {
  const checked = Settings.partial().parse(changes);
  for (const key of Object.keys(changes) as (keyof Settings)[]) {
    const valueJson = JSON.stringify(checked[key]);
    await db.setting.upsert({ where: { key }, create: { key, valueJson }, update: { valueJson } });
  }
}
