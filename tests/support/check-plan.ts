import { daysBetween, type Day } from "#lib/calendar/index.ts";
import type { Plan, PlanItem, PlanProblem } from "#lib/planner/index.ts";

/**
 * Every rule a plan breaks, in words. Written from the problem's description alone and sharing no code
 * with the planner, so that a misread rule in the model shows here.
 */
export function brokenRules(problem: PlanProblem, plan: Plan): string[] {
  const lunches = plan.weeks.flatMap((week) =>
    week.lunches.map((lunch) => ({ ...lunch, monday: week.monday })),
  );
  const itemOf = new Map(problem.items.map((item) => [item.id, item]));
  const shown = lunches.flatMap(({ date, monday, itemIds }) =>
    itemIds.map((id) => ({ date, monday, item: itemOf.get(id) as PlanItem })),
  );
  return [
    ...brokenShape(problem, plan),
    ...brokenParts(
      problem,
      lunches.map(({ date, itemIds }) => ({ date, items: itemIds.map((id) => itemOf.get(id)) })),
    ),
    ...brokenBans(problem, shown),
    ...brokenRests(problem, shown),
    ...brokenLimits(problem, shown),
    ...brokenQuotas(problem, shown),
    ...brokenThemes(problem, plan),
    ...problem.locks
      .filter(
        (lock) => !shown.some(({ date, item }) => date === lock.date && item.id === lock.itemId),
      )
      .map((lock) => `lock lost: ${lock.itemId} on ${lock.date}`),
  ];
}

type Shown = { readonly date: Day; readonly monday: Day; readonly item: PlanItem };

function brokenShape(problem: PlanProblem, plan: Plan): string[] {
  const wanted = problem.weeks.map((week) =>
    [week.monday, ...week.days.map(({ date }) => date)].join(),
  );
  const got = plan.weeks.map((week) =>
    [week.monday, ...week.lunches.map(({ date }) => date)].join(),
  );
  return wanted.join(";") === got.join(";") ? [] : ["days differ from those asked for"];
}

function brokenParts(
  problem: PlanProblem,
  lunches: { date: Day; items: (PlanItem | undefined)[] }[],
): string[] {
  return lunches.flatMap(({ date, items }) => {
    if (items.includes(undefined)) return [`unknown item on ${date}`];
    const strays = items.filter((item) => !problem.parts.some(({ part }) => part === item?.part));
    const counts = problem.parts.filter(({ part, min, max }) => {
      const count = items.filter((item) => item?.part === part).length;
      return count < min || count > max;
    });
    return [...strays, ...counts].map((entry) => `part ${entry?.part} on ${date}`);
  });
}

function brokenBans(problem: PlanProblem, shown: readonly Shown[]): string[] {
  return problem.forbidden.flatMap((rule) =>
    shown
      .filter(
        ({ date, item }) =>
          rule.itemIds.includes(item.id) && (rule.on === null || rule.on.includes(date)),
      )
      .map(({ date, item }) => `${rule.name}: ${item.name} on ${date}`),
  );
}

function brokenRests(problem: PlanProblem, shown: readonly Shown[]): string[] {
  return problem.rests.flatMap((rest) => {
    const inside = shown
      .filter(({ item }) => rest.itemIds.includes(item.id))
      .map(({ date }) => date);
    const all = [...inside, ...rest.shownOn];
    return inside.flatMap((date, place) =>
      all
        .filter(
          (other, otherPlace) =>
            otherPlace > place && Math.abs(daysBetween(date, other)) < rest.restDays,
        )
        .map((other) => `rest of ${rest.id}: ${date} and ${other}`),
    );
  });
}

function brokenLimits(problem: PlanProblem, shown: readonly Shown[]): string[] {
  const { perLunchMax, perWeekMax, perWeekMin } = problem.newFoods;
  return problem.weeks.flatMap((week) => {
    const ofWeek = shown.filter(({ monday }) => monday === week.monday);
    const cents = ofWeek.reduce((sum, { item }) => sum + item.costCents, 0);
    const fresh = ofWeek.filter(({ item }) => item.isNew).length;
    const daily = week.days.flatMap(({ date, minutesMax }) => {
      const ofDay = ofWeek.filter((entry) => entry.date === date);
      const minutes = ofDay.reduce((sum, { item }) => sum + item.minutes, 0);
      return [
        minutes > (minutesMax ?? Infinity) + 1e-6 ? `minutes on ${date}` : "",
        ofDay.filter(({ item }) => item.isNew).length > perLunchMax ? `new foods on ${date}` : "",
      ];
    });
    const weekly = cents > (week.budgetCents ?? Infinity) + 1e-6 ? `budget of ${week.monday}` : "";
    const novel = fresh < perWeekMin || fresh > perWeekMax ? `new foods of ${week.monday}` : "";
    return [...daily, weekly, novel].filter((line) => line !== "");
  });
}

function brokenQuotas(problem: PlanProblem, shown: readonly Shown[]): string[] {
  return problem.quotas.flatMap((quota) => {
    const units = problem.weeks.flatMap(({ monday, days }) =>
      quota.scope === "week" ? [monday] : days.map(({ date }) => date),
    );
    return units
      .filter((unit) => quota.on === null || quota.on.includes(unit))
      .filter((unit) => {
        const count = shown.filter(
          ({ date, monday, item }) =>
            (quota.scope === "week" ? monday : date) === unit && quota.itemIds.includes(item.id),
        ).length;
        return count < quota.min || count > (quota.max ?? Infinity);
      })
      .map((unit) => `${quota.name} on ${unit}`);
  });
}

function brokenThemes(problem: PlanProblem, plan: Plan): string[] {
  return plan.weeks.flatMap((week, place) => {
    const theme = problem.themes.find(({ id }) => id === week.themeId);
    const locked = problem.weeks[place]?.lockedThemeId ?? null;
    if (week.themeId !== null && !theme) return [`unknown theme ${week.themeId}`];
    const lines =
      locked !== null && locked !== week.themeId ? [`theme lock of ${week.monday}`] : [];
    if (!theme) return lines;
    if (theme.notIn.some(({ monday }) => monday === week.monday))
      lines.push(`theme ${theme.id} out`);
    if (theme.shownOn.some((past) => Math.abs(daysBetween(past, week.monday)) < theme.restDays)) {
      lines.push(`theme ${theme.id} rests`);
    }
    for (const later of plan.weeks.slice(place + 1)) {
      const apart = problem.themesApart.filter(
        ({ themeIds }) => themeIds.includes(theme.id) && themeIds.includes(later.themeId ?? ""),
      );
      if (later.themeId === theme.id) lines.push(`theme ${theme.id} twice`);
      if (apart.some(({ days }) => daysBetween(week.monday, later.monday) < days))
        lines.push(`near themes ${theme.id}`);
    }
    return lines;
  });
}
