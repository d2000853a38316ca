import type { z } from "zod";
import { ok, refuse, type Result } from "#lib/base/index.ts";
import type { FoodId } from "#lib/catalog/index.ts";
import {
  inTransaction,
  readSchoolRules,
  writeSchoolRule,
  type Db,
  type SchoolRuleRecord,
} from "#lib/db/index.ts";
import { RULE_STARTS, UNLIMITED_RULE } from "#lib/safety/index.ts";
import type { Context } from "../context.ts";
import type { RuleInput } from "./rule-sheet.input.ts";
import type { SheetProblem } from "./sheet-problem.ts";
import { stampOf } from "./stamp.ts";

type TypedRule = z.input<typeof RuleInput>;

/** A rule's sheet as its form opens, or undefined when there is none. */
export async function loadRuleSheet({ db }: Context, id: string): Promise<TypedRule | undefined> {
  const record = (await readSchoolRules(db)).find((one) => one.id === id);
  return record && sheetOf(db, record);
}

/** The sheet of a new rule, begun from one of our suggestions when it is named. */
export async function startRuleSheet(
  { db }: Context,
  start: string | undefined,
): Promise<TypedRule> {
  const rule = RULE_STARTS.find((one) => one.id === start)?.rule ?? { ...UNLIMITED_RULE, name: "" };
  return { ...(await sheetOf(db, { id: "", rule, isActive: true })), stamp: "" };
}

/** Saves a rule of the school. Refuses when another tab saved first, or a food it names is gone. */
export async function saveRule(
  { db }: Context,
  input: RuleInput,
): Promise<Result<{ readonly id: string }, SheetProblem>> {
  return inTransaction(db, async (tx) => {
    const standing = (await readSchoolRules(tx)).find((one) => one.id === input.id);
    if (input.id !== "" && !standing) return refuse({ kind: "gone" });
    if (standing && (await sheetOf(tx, standing)).stamp !== input.stamp) {
      return refuse({ kind: "changed-elsewhere" });
    }
    const foods = input.foods.map((food) => food.id);
    const known = await namesOf(tx, foods);
    const missing = foods.findIndex((id) => !known.has(id));
    if (missing >= 0) return refuse({ kind: "food-gone", field: "foods" });
    const rule = {
      name: input.name,
      traits: input.traits,
      allergens: input.allergens,
      foods,
      from: input.from || null,
      to: input.to || null,
      weekdays: input.weekdays.length === 0 ? null : input.weekdays,
      exceptDays: input.exceptDays.map(({ day }) => day),
    };
    return ok({ id: await writeSchoolRule(tx, standing?.id, rule, input.isActive) });
  });
}

/** Takes a rule away. Refuses when it is gone already. */
export async function removeRule(
  { db }: Context,
  { id }: { readonly id: string },
): Promise<Result<undefined, SheetProblem>> {
  const { count } = await db.schoolRule.deleteMany({ where: { id } });
  return count === 0 ? refuse({ kind: "gone" }) : ok(undefined);
}

async function sheetOf(db: Db, { id, rule, isActive }: SchoolRuleRecord): Promise<TypedRule> {
  const names = await namesOf(db, rule.foods);
  const typed = {
    id,
    name: rule.name,
    traits: rule.traits,
    allergens: rule.allergens,
    foods: rule.foods.map((food) => ({ id: food, name: names.get(food) ?? food })),
    from: rule.from ?? "",
    to: rule.to ?? "",
    weekdays: tickedDays(rule.weekdays ?? []),
    exceptDays: rule.exceptDays.map((day) => ({ day })),
    isActive,
  };
  return { ...typed, stamp: stampOf(typed) };
}

/** Weekday numbers as a form ticks them. */
export function tickedDays(days: readonly number[]): TypedRule["weekdays"] {
  return (["1", "2", "3", "4", "5", "6", "7"] as const).filter((day) => days.includes(Number(day)));
}

async function namesOf(db: Db, ids: readonly FoodId[]): Promise<Map<string, string>> {
  if (ids.length === 0) return new Map();
  const rows = await db.food.findMany({
    where: { id: { in: [...ids] } },
    select: { id: true, name: true },
  });
  return new Map(rows.map(({ id, name }) => [id, name]));
}
