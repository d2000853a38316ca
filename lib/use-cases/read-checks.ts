import { gramsOf } from "#lib/catalog/index.ts";
import { partsOf, type Day } from "#lib/calendar/index.ts";
import {
  keepUntilWritten,
  readChildren,
  readLabels,
  readOfferedFoods,
  readRecalls,
  readSchoolRules,
  readWaivers,
  type Db,
  type ItemRecord,
  type LunchRecord,
  type Settings,
} from "#lib/db/index.ts";
import { ageInMonths } from "#lib/reactions/index.ts";
import {
  balanceOfWeek,
  checkLunch,
  checkWeek,
  findStandIns,
  judgeFindings,
  schemeWord,
  SOURCES,
  USUAL_CARRYING,
  type BoxItem,
  type BoxLunch,
  type CheckGround,
  type Finding,
  type JudgedFinding,
  type Source,
  type WeekBalance,
} from "#lib/safety/index.ts";

/** A finding as pages show it. */
export type FindingView = JudgedFinding & {
  readonly cites: readonly Source[];
  /** Foods that could step in for one, by name; none of them is thereby cleared. */
  readonly standIns: { readonly forFood: string; readonly names: readonly string[] } | undefined;
};

export type WeekChecks = {
  readonly notes: readonly Finding[];
  readonly balance:
    (WeekBalance & { readonly cites: readonly Source[]; readonly scheme: string }) | null;
};

export type Unset = { readonly sentence: string; readonly href: string };

/** Checks lunches that were read already; nothing more is asked of the storage. */
export type Checks = {
  readonly of: (lunch: LunchRecord) => readonly JudgedFinding[];
  /** The most serious broken rule that nobody decided to keep. Temperatures break none: they are left out. */
  readonly broken: (lunch: LunchRecord) => JudgedFinding | undefined;
  /** With sources and stand-ins, for a page that shows one lunch in full. */
  readonly inFull: (lunch: LunchRecord, themeMotifs: readonly string[]) => readonly FindingView[];
  /** What only the week as a whole can tell, and its table by the chosen scheme; null without one. */
  readonly ofWeek: (lunches: readonly LunchRecord[]) => WeekChecks;
  /** What cannot be checked for want of a record, in sentences, and where it is entered. */
  readonly unset: readonly Unset[];
};

/** Reads what checks need: the household and labels as kept, and the notes on these lunches. */
export async function readChecks(
  db: Db,
  lunches: readonly { readonly id: string }[],
  settings: Settings,
): Promise<Checks> {
  const [{ children, rules, labels, recalls, foods }, waivers] = await Promise.all([
    keepUntilWritten(db, "checks", () => readGround(db)),
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
    scheme: settings.balanceScheme,
    journey: {
      carrying: settings.carrying ?? USUAL_CARRYING,
      departure: settings.departure,
      lunchAt: settings.lunchAt,
    },
  });
  const boxOf = (lunch: LunchRecord): BoxLunch => ({
    id: lunch.id,
    date: lunch.date,
    outside: outsideOn(lunch, settings.climateC),
    items: lunch.items
      .filter(({ fate }) => fate !== "scrapped")
      .map((item) => boxItem(item, labels, recalls)),
  });
  const notesOn = (lunch: LunchRecord) => waivers.get(lunch.id) ?? new Map<string, string>();
  const of = (lunch: LunchRecord): JudgedFinding[] =>
    judgeFindings(checkLunch(boxOf(lunch), groundOn(lunch.date)), notesOn(lunch));
  return {
    of,
    broken: (lunch) => {
      const ground = { ...groundOn(lunch.date), journey: null };
      const [worst] = judgeFindings(checkLunch(boxOf(lunch), ground), notesOn(lunch));
      return worst?.level === "stop" && worst.keptBecause === null ? worst : undefined;
    },
    inFull: (lunch, themeMotifs) =>
      of(lunch).map((finding) => {
        const item = lunch.items.find(({ id }) => id === finding.itemIds[0]);
        const ground = { ...groundOn(lunch.date), day: lunch.date, themeMotifs };
        return {
          ...finding,
          cites: finding.sources.map((id) => SOURCES[id]),
          standIns:
            item && finding.level === "stop" && finding.keptBecause === null
              ? {
                  forFood: item.food.name,
                  names: findStandIns(item, foods, ground, 3).map(({ name }) => name),
                }
              : undefined,
        };
      }),
    ofWeek: (held) => {
      const boxes = held.map(boxOf);
      const balance = balanceOfWeek(boxes, settings.balanceScheme);
      // The lunches speak for themselves elsewhere: only the week as a whole is asked here.
      const scheme = settings.balanceScheme;
      const { week } = checkWeek(boxes, () => ({ children: [], rules: [], journey: null, scheme }));
      return {
        notes: week,
        balance: balance && {
          ...balance,
          scheme: schemeWord(settings.balanceScheme),
          cites: balance.sources.map((id) => SOURCES[id]),
        },
      };
    },
    unset: unsetOf(eaters, inForce.length, settings),
  };
}

/** What all lunches are checked against: kept as one, since every page with a lunch asks for it. */
async function readGround(db: Db) {
  const [children, rules, labels, recalls, foods] = await Promise.all([
    readChildren(db),
    readSchoolRules(db),
    readLabels(db),
    readRecalls(db),
    readOfferedFoods(db),
  ]);
  return { children, rules, labels, recalls, foods };
}

/** What was typed for the day, else the mean of its month. */
function outsideOn(
  { ambientC, date }: LunchRecord,
  climateC: Settings["climateC"],
): BoxLunch["outside"] {
  if (ambientC !== null) return { celsius: ambientC, isTyped: true };
  const mean = climateC?.[partsOf(date)[1] - 1];
  return mean === undefined ? null : { celsius: mean, isTyped: false };
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
    maybeRecalled: productId === null ? (recalls.foodsInPart.get(food.id)?.product ?? null) : null,
  };
}

function unsetOf(
  eaters: readonly { readonly avoidances: readonly unknown[] }[],
  rules: number,
  { carrying }: Settings,
): Unset[] {
  return [
    eaters.every(({ avoidances }) => avoidances.length === 0) && {
      sentence: "No allergy or avoidance of a child is on record, so none is checked.",
      href: "/bible#children",
    },
    rules === 0 && {
      sentence: "No school rule is on record, so none is checked.",
      href: "/bible#rules",
    },
    carrying === null && {
      sentence:
        "How lunch is carried is not said: two cold packs in a soft insulated bag and the least jar of the standard are assumed.",
      href: "/bible/checks",
    },
  ].filter((line) => line !== false);
}
