import { daysBetween } from "#lib/calendar/index.ts";
import type { PlanProblem, PlanTheme, ThemesApart } from "#lib/planner/index.ts";
import { nearThemes } from "#lib/repeats/index.ts";

/** Themes too alike are not seen within four weeks of each other (common practice, no source). */
const APART_DAYS = 28;

/** Pairs of themes that are near each other by their motifs or their names, each pair once. */
export function nearPairs(
  themes: readonly {
    readonly id: string;
    readonly name: string;
    readonly motifs: readonly string[];
  }[],
): ThemesApart[] {
  return themes.flatMap((theme, place) =>
    nearThemes(theme, themes.slice(place + 1)).map(({ theme: near, ...shared }) => ({
      themeIds: [theme.id, near.id] as const,
      days: APART_DAYS,
      why: [...shared.sharedMotifs, ...shared.sharedWords].join(", "),
    })),
  );
}

/** The problem with near themes apart: from each other, and from the weeks that have one already. */
export function withThemesApart(
  problem: PlanProblem,
  themesApart: readonly ThemesApart[],
): PlanProblem {
  const themeOf = new Map(problem.themes.map((theme) => [theme.id, theme]));
  const nearTo = (id: string): PlanTheme[] =>
    themesApart.flatMap(({ themeIds: [one, other] }) => {
      const near = one === id ? other : other === id ? one : undefined;
      return near === undefined ? [] : (themeOf.get(near) ?? []);
    });
  return {
    ...problem,
    themesApart,
    themes: problem.themes.map((theme) => {
      const near = nearTo(theme.id);
      const tooNear = problem.weeks.flatMap(({ monday }) => {
        const close = near.find(({ shownOn }) =>
          shownOn.some((shown) => Math.abs(daysBetween(shown, monday)) < APART_DAYS),
        );
        return close ? [{ monday, why: `too near to ${close.name}` }] : [];
      });
      return { ...theme, notIn: [...theme.notIn, ...tooNear] };
    }),
  };
}
