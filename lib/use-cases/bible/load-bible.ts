import {
  readChildren,
  readDaysOff,
  readSchoolRules,
  readSettings,
  readShops,
  type ChildRecord,
  type SchoolRuleRecord,
  type Settings,
  type ShopRecord,
} from "#lib/db/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import type { Context } from "../context.ts";

export type BibleView = {
  readonly name: string;
  readonly settings: Settings;
  readonly children: readonly ChildRecord[];
  readonly rules: readonly SchoolRuleRecord[];
  /** Names of the foods that rules speak of. */
  readonly foodNames: ReadonlyMap<string, string>;
  readonly shops: readonly ShopRecord[];
  /** Those that are not over yet. */
  readonly daysOff: readonly { readonly from: Day; readonly to: Day; readonly label: string }[];
};

/** Everything the series bible shows, or undefined before there is a series. */
export async function loadBible({ db, today }: Context): Promise<BibleView | undefined> {
  const series = await db.series.findUnique({ where: { id: 1 } });
  if (!series) return undefined;
  const [settings, children, rules, shops, daysOff] = await Promise.all([
    readSettings(db),
    readChildren(db),
    readSchoolRules(db),
    readShops(db),
    readDaysOff(db),
  ]);
  const foods = await db.food.findMany({
    where: { id: { in: rules.flatMap(({ rule }) => rule.foods) } },
    select: { id: true, name: true },
  });
  return {
    ...{ name: series.name, settings, children, rules, shops },
    foodNames: new Map(foods.map((food) => [food.id, food.name])),
    daysOff: daysOff.filter((off) => off.to >= today),
  };
}
