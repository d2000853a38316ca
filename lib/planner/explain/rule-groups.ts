import { mediumDay } from "#lib/calendar/index.ts";
import type { ForbiddingKind, PlanProblem, RestGroup } from "../problem.ts";

/** One rule as a person names it; a conflict is a set of these. */
export type RuleGroup = {
  readonly id: string;
  readonly kind: ForbiddingKind | "rest" | "minutes" | "budget" | "new" | "quota" | "lock" | "part";
  readonly name: string;
  /** False for what is never traded: health, the school, how food is kept. */
  readonly isAdjustable: boolean;
};

/** Forbidding rules a person may lift; the others are never offered. */
const LIFTABLE: readonly ForbiddingKind[] = ["season", "unavailable", "ban"];
const LEVELS: readonly RestGroup["level"][] = ["trick", "product", "family", "food"];

/** All rules of a problem that can stand against a lunch, the most easily given up first. */
export function ruleGroups(problem: PlanProblem): RuleGroup[] {
  const group = (kind: RuleGroup["kind"], id: string, name: string): RuleGroup => {
    const isAdjustable = !isForbidding(kind) || LIFTABLE.includes(kind);
    return { id: `${kind}:${id}`, kind, name, isAdjustable };
  };
  const on = mediumDay;
  const groups = [
    ...problem.weeks.flatMap(({ days }) =>
      days
        .filter(({ minutesMax }) => minutesMax !== null)
        .map(({ date, minutesMax }) =>
          group("minutes", date, `${minutesMax ?? 0} minutes in the morning of ${on(date)}`),
        ),
    ),
    ...problem.weeks
      .filter(({ budgetCents }) => budgetCents !== null)
      .map(({ monday }) => group("budget", monday, `the money for the week of ${on(monday)}`)),
    group("new", "all", "how many new foods a lunch and a week hold"),
    ...LEVELS.filter((level) => problem.rests.some((rest) => rest.level === level)).map((level) =>
      group("rest", level, restName(problem, level)),
    ),
    ...problem.quotas.map(({ id, name }) => group("quota", id, name)),
    ...problem.locks.map(({ date, itemId }) =>
      group("lock", `${date} ${itemId}`, `${nameOf(problem, itemId)} is locked on ${on(date)}`),
    ),
    ...problem.forbidden.map(({ id, kind, name }) => group(kind, id, name)),
    ...problem.parts
      .filter(({ min }) => min > 0)
      .map(({ part, min }) => group("part", part, `every lunch has ${min} ${part}`)),
  ];
  return [
    ...groups.filter(({ isAdjustable }) => isAdjustable),
    ...groups.filter(({ isAdjustable }) => !isAdjustable),
  ];
}

/** The problem with some rules gone. What remains of a rest: nothing twice in one lunch. */
export function withoutGroups(problem: PlanProblem, dropped: readonly RuleGroup[]): PlanProblem {
  const gone = new Set(dropped.map(({ id }) => id));
  const has = (kind: RuleGroup["kind"], id: string): boolean => !gone.has(`${kind}:${id}`);
  const most = problem.items.length;
  return {
    ...problem,
    weeks: problem.weeks.map((week) => ({
      ...week,
      budgetCents: has("budget", week.monday) ? week.budgetCents : null,
      days: week.days.map((day) => ({
        ...day,
        minutesMax: has("minutes", day.date) ? day.minutesMax : null,
      })),
    })),
    parts: problem.parts.map((part) => (has("part", part.part) ? part : { ...part, min: 0 })),
    rests: problem.rests.map((rest) =>
      has("rest", rest.level) ? rest : { ...rest, restDays: 1, shownOn: [] },
    ),
    quotas: problem.quotas.filter(({ id }) => has("quota", id)),
    locks: problem.locks.filter(({ date, itemId }) => has("lock", `${date} ${itemId}`)),
    forbidden: problem.forbidden.filter(({ id, kind }) => has(kind, id)),
    newFoods: has("new", "all")
      ? problem.newFoods
      : { perLunchMax: most, perWeekMax: most, perWeekMin: 0 },
  };
}

function isForbidding(kind: RuleGroup["kind"]): kind is ForbiddingKind {
  return !["rest", "minutes", "budget", "new", "quota", "lock", "part"].includes(kind);
}

function restName({ rests }: PlanProblem, level: RestGroup["level"]): string {
  const days = rests.filter((rest) => rest.level === level).map(({ restDays }) => restDays);
  const [least, most] = [Math.min(...days), Math.max(...days)];
  const span = least === most ? `${most}` : `${least} to ${most}`;
  const WORDS = {
    product: "a product",
    food: "a food",
    family: "a family of foods",
    trick: "a trick",
  };
  return `${WORDS[level]} rests ${span} days`;
}

function nameOf({ items }: PlanProblem, id: string): string {
  return items.find((item) => item.id === id)?.name ?? id;
}
