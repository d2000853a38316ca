import { mediumDay, type Day } from "#lib/calendar/index.ts";
import { AIM_WORDS, type Conflict, type WhyNot } from "#lib/planner/index.ts";

/** Why a food is not in the proposal, in a sentence or two. */
export function describeWhyNot(
  name: string,
  answer: WhyNot,
  nameOf: (itemId: string) => string,
): string {
  switch (answer.kind) {
    case "unknown":
      return `${sentence(name)} has no place in these lunches: its part is not planned.`;
    case "there":
      return `${sentence(name)} is there, on ${answer.dates.map(mediumDay).join(" and ")}.`;
    case "ruled-out":
      return `${sentence(name)} is ruled out on every day. On ${mediumDay(answer.date)} by: ${answer.rules.join("; ")}.`;
    case "costs": {
      const cost = Math.max(0, -answer.points).toFixed(1);
      const lost = answer.aims.filter(({ points }) => points < 0).slice(0, 2);
      const why = lost.map(({ aim }) => AIM_WORDS[aim]).join(" and ");
      return `${sentence(name)} fits best on ${mediumDay(answer.date)} instead of ${nameOf(answer.insteadOf)}, and costs ${cost} points there${why ? `, less of: ${why}` : ""}.`;
    }
  }
}

/** A conflict in words: the fixes first, then the rules that cannot all be kept. */
export function describeConflict({ dates, groups, fixes }: Conflict): {
  readonly fixes: readonly string[];
  readonly rules: string;
} {
  const [first, last] = [dates[0] as Day, dates.at(-1) as Day];
  const when =
    dates.length === 1
      ? `on ${mediumDay(first)}`
      : `from ${mediumDay(first)} to ${mediumDay(last)}`;
  return {
    rules: `No lunch ${when} can keep all of these together: ${groups.map(({ name }) => name).join("; ")}.`,
    fixes: fixes.map(({ group, needed, isEnough }) => {
      const what =
        needed === null
          ? `Give up: ${group.name}`
          : group.kind === "minutes"
            ? `${needed} minutes instead of ${group.name}`
            : `${(needed / 100).toFixed(2)} as ${group.name}`;
      return isEnough ? `${what}. Then a plan exists.` : `${what}. Another rule stands behind it.`;
    }),
  };
}

function sentence(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}
