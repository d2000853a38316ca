import { z } from "zod";
import { Day } from "#lib/calendar/index.ts";
import { Allergen, FamilyId, FoodId } from "#lib/catalog/index.ts";
import { SchoolRule, Severity, UNLIMITED_RULE, type Avoidance } from "#lib/safety/index.ts";
import type { Db } from "./client.ts";
import type { Prisma } from "./generated/client.ts";
import { parseColumn } from "./json.ts";

/** What a child avoids, as stored. */
export type AvoidanceRecord = {
  readonly id: string;
  readonly avoidance: Avoidance;
  /** The allergen, food or family in words. */
  readonly what: string;
  readonly note: string;
};

/** A child as stored. `privateName` must never reach anything public. */
export type ChildRecord = {
  readonly id: string;
  readonly privateName: string;
  readonly onScreenName: string;
  /** `YYYY-MM`, or null when not said. */
  readonly birthMonth: string | null;
  /** 1 is the portion that amounts are written for. */
  readonly portionFactor: number;
  /** Chosen by the user; null: by age. */
  readonly facePoints: 3 | 5 | 7 | null;
  readonly position: number;
  readonly isRetired: boolean;
  readonly avoidances: readonly AvoidanceRecord[];
};

const FacePointsColumn = z.union([z.literal(3), z.literal(5), z.literal(7)]).nullable();

const withAvoidances = {
  avoidances: {
    orderBy: { id: "asc" },
    include: { food: { select: { name: true } }, family: { select: { name: true } } },
  },
} as const satisfies Prisma.ChildInclude;

type ChildRow = Prisma.ChildGetPayload<{ include: typeof withAvoidances }>;

/** Every child, retired ones too, in the order of the series bible, with what each avoids. */
export async function readChildren(db: Db): Promise<ChildRecord[]> {
  const rows = await db.child.findMany({
    orderBy: [{ position: "asc" }, { id: "asc" }],
    include: withAvoidances,
  });
  return rows.map((row) => ({
    id: row.id,
    privateName: row.privateName,
    onScreenName: row.onScreenName,
    birthMonth: row.birthMonth,
    portionFactor: row.portionFactor,
    facePoints: FacePointsColumn.parse(row.facePoints),
    position: row.position,
    isRetired: row.retiredAt !== null,
    avoidances: row.avoidances.map(avoidanceOfRow),
  }));
}

function avoidanceOfRow(row: ChildRow["avoidances"][number]): AvoidanceRecord {
  const severity = Severity.parse(row.severity);
  const { id, note } = row;
  if (row.allergen !== null) {
    const allergen = Allergen.parse(row.allergen);
    return { id, note, what: allergen, avoidance: { severity, allergen } };
  }
  if (row.foodId !== null) {
    const food = FoodId.parse(row.foodId);
    return { id, note, what: row.food?.name ?? food, avoidance: { severity, food } };
  }
  const family = FamilyId.parse(row.familyId);
  return { id, note, what: row.family?.name ?? family, avoidance: { severity, family } };
}

/** A rule of the school as stored. */
export type SchoolRuleRecord = {
  readonly id: string;
  readonly rule: SchoolRule;
  readonly isActive: boolean;
};

/**
 * Every school rule, those switched off too, in order. What a stored rule lacks is taken as not
 * limited, so that files written before rules knew days stay readable.
 */
export async function readSchoolRules(db: Db): Promise<SchoolRuleRecord[]> {
  const rows = await db.schoolRule.findMany({ orderBy: [{ position: "asc" }, { id: "asc" }] });
  return rows.map((row) => {
    const stored = parseColumn(z.record(z.string(), z.unknown()), row.ruleJson, "SchoolRule.rule");
    const rule = SchoolRule.parse({ ...UNLIMITED_RULE, ...stored, name: row.name });
    return { id: row.id, rule, isActive: row.active };
  });
}

/** A school rule as its row's columns, for writing. */
export function schoolRuleColumns(rule: SchoolRule): { name: string; ruleJson: string } {
  return { name: rule.name, ruleJson: JSON.stringify(SchoolRule.parse(rule)) };
}

/** A shop as stored. */
export type ShopRecord = {
  readonly id: string;
  readonly name: string;
  /** ISO weekdays 1–7 it is open. */
  readonly days: readonly number[];
  readonly hours: string;
  readonly distanceOrder: number;
  readonly aisles: readonly string[];
  readonly note: string;
  readonly isRetired: boolean;
};

const Weekdays = z.array(z.number().int().min(1).max(7));

/** Every shop, retired ones too, nearest first. */
export async function readShops(db: Db): Promise<ShopRecord[]> {
  const rows = await db.shop.findMany({ orderBy: [{ distanceOrder: "asc" }, { name: "asc" }] });
  return rows.map((row) => ({
    id: row.id,
    name: row.name,
    days: parseColumn(Weekdays, row.daysJson, "Shop.days"),
    hours: row.hours,
    distanceOrder: row.distanceOrder,
    aisles: parseColumn(z.array(z.string()), row.aislesJson, "Shop.aisles"),
    note: row.note,
    isRetired: row.retiredAt !== null,
  }));
}

/** Days without school, both ends included. */
type DayOffRecord = { readonly from: Day; readonly to: Day; readonly label: string };

/** Every span of days off, earliest first. */
export async function readDaysOff(db: Db): Promise<DayOffRecord[]> {
  const rows = await db.dayOff.findMany({ orderBy: [{ from: "asc" }, { to: "asc" }] });
  return rows.map(({ from, to, label }) => ({ from: Day.parse(from), to: Day.parse(to), label }));
}
