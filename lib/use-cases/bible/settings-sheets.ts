import type { z } from "zod";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import {
  inTransaction,
  readChildren,
  readDaysOff,
  readSettings,
  replaceDaysOff,
  writeSettings,
  type Db,
} from "#lib/db/index.ts";
import { APPLIANCES } from "#lib/catalog/index.ts";
import { holdsPhrase } from "#lib/safety/index.ts";
import type { Context } from "../context.ts";
import { tickedDays } from "./rule-sheet.ts";
import type { DaysInput, LimitsInput, PublicInput, SeriesInput } from "./settings-sheets.input.ts";
import type { SheetProblem } from "./sheet-problem.ts";
import { stampOf } from "./stamp.ts";

/** The appliances that a household counts; every kitchen has the cold ones. */
const KITCHEN = APPLIANCES.filter((one) => !["none", "fridge", "freezer"].includes(one));

/** What a sheet is read from: a context, or a transaction. */
type Kept = { readonly db: Db };
type Outcome = Result<undefined, SheetProblem>;
type Stamped<Input extends z.ZodType> = z.input<Input>;

/** Saves the series' name and how it speaks. */
export function saveSeriesSheet(
  { db }: Context,
  { stamp, name, ...settings }: SeriesInput,
): Promise<Outcome> {
  return inTransaction(db, async (tx) => {
    const standing = await loadSeriesSheet({ db: tx });
    if (!standing) return refuse({ kind: "no-series" });
    if (standing.stamp !== stamp) return refuse({ kind: "changed-elsewhere" });
    await tx.series.update({ where: { id: 1 }, data: { name } });
    await writeSettings(tx, settings);
    return ok(undefined);
  });
}

/** Saves school days, hours and days off. Lunches planned already stay where they are. */
export function saveDaysSheet(
  { db }: Context,
  { stamp, daysOff, ...settings }: DaysInput,
): Promise<Outcome> {
  return inTransaction(db, async (tx) => {
    if ((await loadDaysSheet({ db: tx })).stamp !== stamp)
      return refuse({ kind: "changed-elsewhere" });
    await writeSettings(tx, settings);
    await replaceDaysOff(
      tx,
      daysOff.map(({ from, to, label }) => ({ from, to: to || from, label })),
    );
    return ok(undefined);
  });
}

/** Saves the limits that the planner, Errands and Mise keep to. */
export function saveLimitsSheet(
  { db }: Context,
  { stamp, weekBudget, ...settings }: LimitsInput,
): Promise<Outcome> {
  return inTransaction(db, async (tx) => {
    if ((await loadLimitsSheet({ db: tx })).stamp !== stamp)
      return refuse({ kind: "changed-elsewhere" });
    await writeSettings(tx, { ...settings, weekBudgetCents: weekBudget });
    return ok(undefined);
  });
}

/**
 * Saves what may leave the house. The children's private names stay among the private words, whatever
 * was typed; a word that an on-screen name holds is refused, as no draft could then name that child.
 */
export function savePublicSheet(
  { db }: Context,
  { stamp, privateWords, ...settings }: PublicInput,
): Promise<Outcome> {
  return inTransaction(db, async (tx) => {
    if ((await loadPublicSheet({ db: tx })).stamp !== stamp)
      return refuse({ kind: "changed-elsewhere" });
    const children = await readChildren(tx);
    const clash = children.some(({ onScreenName }) =>
      privateWords.some((word) => holdsPhrase(onScreenName, word)),
    );
    if (clash) return refuse({ kind: "word-on-screen", field: "privateWords" });
    const names = children.map((child) => child.privateName);
    await writeSettings(tx, {
      ...settings,
      privateWords: [...new Set([...names, ...privateWords])],
    });
    return ok(undefined);
  });
}

/** The series sheet as its form opens, or undefined before there is a series. */
export async function loadSeriesSheet({
  db,
}: Kept): Promise<Stamped<typeof SeriesInput> | undefined> {
  const series = await db.series.findUnique({ where: { id: 1 } });
  if (!series) return undefined;
  const { wordsPerMinute, signOn, signOff, housePhrases, runningFeatures, tone, emoji } =
    await readSettings(db);
  return stamped({
    ...{ name: series.name, wordsPerMinute, signOn, signOff, tone, emoji },
    housePhrases: housePhrases.join("\n"),
    runningFeatures: runningFeatures.join("\n"),
  });
}

/** The sheet of school days and days off as its form opens. */
export async function loadDaysSheet({ db }: Kept): Promise<Stamped<typeof DaysInput>> {
  const { schoolDays, departure, lunchAt, verdictAt, timeZone } = await readSettings(db);
  const daysOff = await readDaysOff(db);
  return stamped({
    ...{ schoolDays: tickedDays(schoolDays), departure, lunchAt, verdictAt },
    timeZone: timeZone ?? "",
    daysOff: daysOff.map(({ from, to, label }) => ({ from, to: to === from ? "" : to, label })),
  });
}

/** The sheet of limits as its form opens. */
export async function loadLimitsSheet({ db }: Kept): Promise<Stamped<typeof LimitsInput>> {
  const settings = await readSettings(db);
  const { morningFrom, eveningFrom, bedtime, morningMinutes, cooks, currency } = settings;
  const { newFoodsPerLunchMax, newFoodsPerWeekMax, wantsDiscoveries, themeRestDays } = settings;
  const { productRestDays, foodRestDays, familyRestDays, trickRestDays } = settings;
  const cents = settings.weekBudgetCents;
  return stamped({
    ...{ morningFrom, eveningFrom, bedtime, morningMinutes, cooks, currency },
    ...{ newFoodsPerLunchMax, newFoodsPerWeekMax, wantsDiscoveries, themeRestDays },
    ...{ productRestDays, foodRestDays, familyRestDays, trickRestDays },
    appliances: Object.fromEntries(
      KITCHEN.map((appliance) => [appliance, settings.appliances[appliance] ?? 0]),
    ),
    weekBudget: cents === null ? "" : (cents / 100).toFixed(2),
  });
}

/** The sheet of what may leave the house as its form opens. */
export async function loadPublicSheet({ db }: Kept): Promise<Stamped<typeof PublicInput>> {
  const { lawNote, privateWords, titleMax, descriptionMax, firstLinesMax } = await readSettings(db);
  return stamped({
    ...{ lawNote, titleMax, descriptionMax, firstLinesMax },
    privateWords: privateWords.join("\n"),
  });
}

function stamped<Typed extends object>(typed: Typed): Typed & { stamp: string } {
  return { ...typed, stamp: stampOf(typed) };
}
