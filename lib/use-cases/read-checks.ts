import { gramsOf } from "#lib/catalog/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import {
  keepUntilWritten,
  readChildren,
  readFoods,
  readLabels,
  readRecalls,
  readSchoolRules,
  readWaivers,
  type Db,
  type ItemRecord,
  type LunchRecord,
} from "#lib/db/index.ts";
import { ageInMonths } from "#lib/reactions/index.ts";
import {
  checkLunch,
  findStandIns,
  judgeFindings,
  SOURCES,
  type BoxItem,
  type BoxLunch,
  type CheckGround,
  type JudgedFinding,
  type Source,
} from "#lib/safety/index.ts";

/** A finding as pages show it. */
export type FindingView = JudgedFinding & {
  readonly cites: readonly Source[];
  /** Foods that could step in, by name; none of them is thereby cleared. */
  readonly standIns: readonly string[];
};

/** Checks lunches that were read already; nothing more is asked of the storage. */
export type Checks = {
  readonly of: (lunch: LunchRecord) => readonly JudgedFinding[];
  /** With sources and stand-ins, for a page that shows one lunch in full. */
  readonly inFull: (lunch: LunchRecord, themeMotifs: readonly string[]) => readonly FindingView[];
  /** What cannot be checked for want of a record, in sentences. */
  readonly unset: readonly string[];
};

/** Reads what checks need: the household and labels as kept, and the notes on these lunches. */
export async function readChecks(
  db: Db,
  lunches: readonly { readonly id: string }[],
): Promise<Checks> {
  const [children, rules, labels, recalls, foods, waivers] = await Promise.all([
    keepUntilWritten(db, "checks-children", () => readChildren(db)),
    keepUntilWritten(db, "checks-rules", () => readSchoolRules(db)),
    readLabels(db),
    readRecalls(db),
    readFoods(db),
    readWaivers(
      db,
      lunches.map(({ id }) => id),
    ),
  ]);
  const eaters = children.filter(({ isRetired }) => !isRetired);
  const inForce = rules.flatMap(({ rule, isActive }) => (isActive ? [rule] : []));
  const groundOn = (date: Day): CheckGround => ({
    children: eaters.map((child) => ({
      id: child.id,
      name: child.onScreenName,
      portionFactor: child.portionFactor,
      ageMonths: child.birthMonth === null ? null : ageInMonths(child.birthMonth, date),
      avoidances: child.avoidances.map(({ avoidance }) => avoidance),
    })),
    rules: inForce,
  });
  const boxOf = (lunch: LunchRecord): BoxLunch => ({
    id: lunch.id,
    date: lunch.date,
    items: lunch.items
      .filter(({ fate }) => fate !== "scrapped")
      .map((item) => boxItem(item, labels, recalls)),
  });
  const of = (lunch: LunchRecord): JudgedFinding[] =>
    judgeFindings(
      checkLunch(boxOf(lunch), groundOn(lunch.date)),
      waivers.get(lunch.id) ?? new Map<string, string>(),
    );
  return {
    of,
    inFull: (lunch, themeMotifs) =>
      of(lunch).map((finding) => {
        const items = lunch.items.filter(({ id }) => finding.itemIds.includes(id));
        const ground = { ...groundOn(lunch.date), day: lunch.date, themeMotifs };
        return {
          ...finding,
          cites: finding.sources.map((id) => SOURCES[id]),
          standIns:
            finding.level === "stop" && finding.keptBecause === null
              ? items
                  .slice(0, 1)
                  .flatMap((item) => findStandIns(item, foods, ground, 3).map(({ name }) => name))
              : [],
        };
      }),
    unset: unsetOf(eaters, inForce.length),
  };
}

function boxItem(
  item: ItemRecord,
  labels: Awaited<ReturnType<typeof readLabels>>,
  recalls: Awaited<ReturnType<typeof readRecalls>>,
): BoxItem {
  const { id, food, part, productId } = item;
  const weighed = gramsOf(food, { amount: item.amount, unit: item.unit });
  return {
    ...{ id, food, part },
    grams: weighed.ok ? weighed.value : food.servingGrams,
    trickIds: item.tricks.map((trick) => trick.id),
    notFor: item.shares.filter(({ amount }) => amount === 0).map(({ childId }) => childId),
    product: productId === null ? null : (labels.get(productId) ?? null),
    recall:
      (productId === null ? undefined : recalls.products.get(productId)) ??
      recalls.foods.get(food.id) ??
      null,
  };
}

function unsetOf(
  eaters: readonly { readonly avoidances: readonly unknown[] }[],
  rules: number,
): string[] {
  return [
    eaters.every(({ avoidances }) => avoidances.length === 0) &&
      "No allergy or avoidance of a child is on record, so none is checked.",
    rules === 0 && "No school rule is on record, so none is checked.",
  ].filter((line) => line !== false);
}
