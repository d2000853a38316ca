import { groupBy } from "#lib/base/index.ts";
import { dayNumber } from "#lib/calendar/index.ts";
import { indexAllowed, indexQuotas, indexRests, itemNumbers, positionsOf } from "./index-rules.ts";
import { indexShops } from "./index-shops.ts";
import { indexThemes } from "./index-themes.ts";
import type { Cell, IndexedOwed, IndexedProblem, IndexedReturn } from "./indexed.ts";
import { steadyAims } from "./item-aims.ts";
import type { PlanProblem } from "./problem.ts";
import { POINTS } from "./weights.ts";

/** Numbers for names, once per problem. Throws on two items, themes or days of one id (a caller's bug). */
export function indexProblem(problem: PlanProblem): IndexedProblem {
  const { items, themes, weeks } = problem;
  if (weeks.some((week) => week.days.length === 0)) throw new Error("a planned week has no day");
  const days = weeks.flatMap((week, number) => week.days.map((day) => ({ ...day, week: number })));
  const itemIndex = numbersOf(items.map(({ id }) => id));
  const dayIndex = numbersOf(days.map(({ date }) => date));
  const themeIndex = numbersOf(themes.map(({ id }) => id));
  const places = {
    dayCount: days.length,
    itemCount: items.length,
    dayNumbers: Int32Array.from(days, ({ date }) => dayNumber(date)),
    mondayNumbers: Int32Array.from(weeks, ({ monday }) => dayNumber(monday)),
    itemIndex,
    dayIndex,
  };
  const rests = indexRests(problem, places);
  const quotas = indexQuotas(problem, places);
  const owed = indexOwed(problem, places.dayNumbers, itemIndex);
  const returns = indexReturns(problem);
  return {
    problem,
    ...places,
    weekCount: weeks.length,
    themeCount: themes.length,
    themeIndex,
    weekOfDay: Int32Array.from(days, ({ week }) => week),
    daysOfWeek: weeks.map((_, week) => [...days.keys()].filter((day) => days[day]?.week === week)),
    minutesMax: Float64Array.from(days, ({ minutesMax }) => minutesMax ?? Infinity),
    budgets: Float64Array.from(weeks, ({ budgetCents }) => budgetCents ?? Infinity),
    allowed: indexAllowed(problem, places),
    values: indexValues(problem, places.dayCount, itemIndex, dayIndex),
    rests,
    restsOfItem: positionsOf(rests, items.length),
    quotas,
    quotasOfItem: positionsOf(quotas, items.length),
    returns,
    returnsOfItem: positionsOf(returns, items.length),
    owed,
    owedOfItem: positionsOf(owed, items.length),
    locks: problem.locks.flatMap(({ date, itemId }) => {
      const day = dayIndex.get(date);
      const item = itemIndex.get(itemId);
      return day === undefined || item === undefined ? [] : [{ day, item }];
    }),
    ...indexThemes(problem, themeIndex),
    ...indexShops(problem),
    ...indexParts(problem),
    ...indexItems(problem),
  };
}

function numbersOf(ids: readonly string[]): Map<string, number> {
  const numbers = new Map(ids.map((id, number) => [id, number]));
  if (numbers.size < ids.length) throw new Error("two entries of a plan problem share an id");
  return numbers;
}

function indexItems({
  items,
}: PlanProblem): Pick<
  IndexedProblem,
  "minutes" | "costs" | "isNew" | "familyOfItem" | "familyCount" | "coloursOfItem" | "colourCount"
> {
  const families = numbersOf([...new Set(items.map(({ familyId }) => familyId))]);
  const colours = numbersOf([...new Set(items.flatMap((item) => item.colours))]);
  return {
    minutes: Float64Array.from(items, ({ minutes }) => minutes),
    costs: Float64Array.from(items, ({ costCents }) => costCents),
    isNew: Uint8Array.from(items, ({ isNew }) => (isNew ? 1 : 0)),
    familyOfItem: Int32Array.from(items, ({ familyId }) => families.get(familyId) ?? 0),
    familyCount: families.size,
    coloursOfItem: items.map((item) => itemNumbers([...new Set(item.colours)], colours)),
    colourCount: colours.size,
  };
}

function indexReturns({ items, weights }: PlanProblem): IndexedReturn[] {
  const numbers = [...items.keys()];
  const foods = groupBy(numbers, (item) => items[item]?.foodId ?? "");
  const dressed = numbers.flatMap((item) =>
    [...new Set(items[item]?.trickIds)].map((trickId) => ({ item, trickId })),
  );
  const tricks = groupBy(dressed, ({ trickId }) => trickId);
  return [
    ...[...foods.values()].map((own) => ({
      items: own,
      points: weights.fresh * POINTS.foodRepeat,
    })),
    ...[...tricks.values()].map((own) => ({
      items: own.map(({ item }) => item),
      points: weights.fresh * POINTS.trickRepeat,
    })),
  ];
}

function indexParts({
  parts,
  items,
}: PlanProblem): Pick<IndexedProblem, "cells" | "cellsOfPart" | "partOfItem" | "itemsOfPart"> {
  const cells: Cell[] = parts.flatMap(({ min, max }, part) =>
    Array.from({ length: max }, (_, place) => ({ part, isRequired: place < min })),
  );
  const partOfItem = Int32Array.from(items, (item) =>
    parts.findIndex(({ part }) => part === item.part),
  );
  return {
    cells,
    cellsOfPart: parts.map((_, part) =>
      [...cells.keys()].filter((cell) => cells[cell]?.part === part),
    ),
    partOfItem,
    itemsOfPart: parts.map((_, part) =>
      [...items.keys()].filter((item) => partOfItem[item] === part),
    ),
  };
}

function indexValues(
  problem: PlanProblem,
  dayCount: number,
  itemIndex: ReadonlyMap<string, number>,
  dayIndex: ReadonlyMap<string, number>,
): Float64Array {
  const count = problem.items.length;
  const steady = problem.items.map((item) =>
    Object.values(steadyAims(problem, item)).reduce((sum, points) => sum + points, 0),
  );
  const values = new Float64Array(dayCount * count);
  for (let day = 0; day < dayCount; day += 1) values.set(steady, day * count);
  for (const { itemIds, date, points } of problem.wishes) {
    const only = date === null ? null : (dayIndex.get(date) ?? -1);
    for (const item of itemNumbers(itemIds, itemIndex)) {
      for (let day = 0; day < dayCount; day += 1) {
        if (only !== null && only !== day) continue;
        const place = day * count + item;
        values[place] = (values[place] ?? 0) + problem.weights.wishes * points;
      }
    }
  }
  return values;
}

function indexOwed(
  problem: PlanProblem,
  dayNumbers: Int32Array,
  itemIndex: ReadonlyMap<string, number>,
): IndexedOwed[] {
  return problem.owed.map(({ itemIds, useBy, urgency }) => {
    const limit = useBy === null ? Infinity : dayNumber(useBy);
    return {
      items: itemNumbers(itemIds, itemIndex),
      lastDay: dayNumbers.findLastIndex((number) => number <= limit),
      points: problem.weights.waste * POINTS.owed * urgency,
    };
  });
}
