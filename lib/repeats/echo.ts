import type { ShownWeek } from "./shown.ts";

/** The aspects two weeks are compared by, and how much each counts. Common practice, no source. */
export const ECHO_WEIGHTS = { foods: 0.5, families: 0.15, tricks: 0.15, theme: 0.2 } as const;
export type EchoAspect = keyof typeof ECHO_WEIGHTS;
const ASPECTS = ["foods", "families", "tricks", "theme"] as const satisfies readonly EchoAspect[];

/** How much an id tells within this series: rare ones more. Always above zero. */
export type Distinctiveness = (aspect: EchoAspect, id: string) => number;

/** Something two weeks share, with its part of the echo; parts of all shared things sum to it. */
export type EchoReason = {
  readonly aspect: EchoAspect;
  readonly id: string;
  readonly share: number;
};

export type Echo = {
  /** In [0, 1]: 0 nothing shared, 1 the same content. */
  readonly value: number;
  /** Aspects either week has something in, each in [0, 1]. */
  readonly aspects: ReadonlyMap<EchoAspect, number>;
  /** What they share, weightiest first. */
  readonly reasons: readonly EchoReason[];
};

type Counts = ReadonlyMap<string, number>;
const countsOfWeek = new WeakMap<ShownWeek, ReadonlyMap<EchoAspect, Counts>>();

/**
 * How distinctive foods, families, tricks and themes are in a series: ln(1 + weeks / weeks with it),
 * the inverse document frequency of K. Spärck Jones 1972 with a week as the document.
 */
export function distinctivenessOf(weeks: readonly ShownWeek[]): Distinctiveness {
  const weights = new Map<EchoAspect, Map<string, number>>();
  for (const aspect of ASPECTS) {
    const seen = new Map<string, number>();
    for (const week of weeks) {
      for (const id of aspectCounts(week).get(aspect)?.keys() ?? []) {
        seen.set(id, (seen.get(id) ?? 0) + 1);
      }
    }
    weights.set(aspect, seen);
  }
  const total = Math.max(1, weeks.length);
  const weightOf = (count: number): number => Math.log(1 + total / count);
  for (const seen of weights.values()) {
    for (const [id, count] of seen) seen.set(id, weightOf(count));
  }
  const unseen = weightOf(1);
  return (aspect, id) => weights.get(aspect)?.get(id) ?? unseen;
}

/**
 * How closely two weeks repeat each other. Per aspect a weighted Jaccard similarity
 * Σ w·min(a, b) / Σ w·max(a, b) over how often each id is on (S. Ioffe 2010, "Improved Consistent
 * Sampling, Weighted Minhash and L1 Sketching", §1), w its distinctiveness; then the mean of the
 * aspects by `ECHO_WEIGHTS`, leaving out those that both weeks lack. Symmetric, in [0, 1], and 1
 * exactly when foods, families, tricks, theme and motifs agree in kind and number. Days, amounts and
 * products do not count; staples are left out.
 */
export function echoOf(left: ShownWeek, right: ShownWeek, tells: Distinctiveness): Echo {
  const aspects = new Map<EchoAspect, number>();
  const shares: { aspect: EchoAspect; id: string; part: number }[] = [];
  for (const aspect of ASPECTS) {
    const compared = compare(
      aspectCounts(left).get(aspect) ?? new Map(),
      aspectCounts(right).get(aspect) ?? new Map(),
      (id) => tells(aspect, id),
    );
    if (!compared) continue;
    aspects.set(aspect, compared.value);
    for (const [id, part] of compared.parts) shares.push({ aspect, id, part });
  }
  // Two weeks without anything in them have the same content.
  if (aspects.size === 0) return { value: 1, aspects, reasons: [] };
  const weight = [...aspects.keys()].reduce((sum, aspect) => sum + ECHO_WEIGHTS[aspect], 0);
  const all = [...aspects].reduce((sum, [aspect, value]) => sum + ECHO_WEIGHTS[aspect] * value, 0);
  const isSame = [...aspects.values()].every((value) => value === 1);
  const reasons = shares
    .map(({ aspect, id, part }) => ({ aspect, id, share: (ECHO_WEIGHTS[aspect] * part) / weight }))
    .sort((one, other) => other.share - one.share || one.id.localeCompare(other.id));
  return { value: isSame ? 1 : Math.min(all / weight, 1 - Number.EPSILON), aspects, reasons };
}

/** The `count` earlier weeks that a week echoes most, strongest first, each with its reasons. */
export function closestWeeks(
  week: ShownWeek,
  earlier: readonly ShownWeek[],
  count = 3,
  tells: Distinctiveness = distinctivenessOf([...earlier, week]),
): { readonly week: ShownWeek; readonly echo: Echo }[] {
  return earlier
    .filter((other) => other.week < week.week)
    .map((other) => ({ week: other, echo: echoOf(week, other, tells) }))
    .filter(({ echo }) => echo.value > 0)
    .sort(
      (one, other) =>
        other.echo.value - one.echo.value || (one.week.week < other.week.week ? 1 : -1),
    )
    .slice(0, count);
}

function compare(
  left: Counts,
  right: Counts,
  tells: (id: string) => number,
): { value: number; parts: Map<string, number> } | undefined {
  let shared = 0;
  let all = 0;
  let isSame = left.size === right.size;
  const parts = new Map<string, number>();
  for (const [id, one, other] of inStep(left, right)) {
    const weight = tells(id);
    if (one !== other) isSame = false;
    if (one > 0 && other > 0) parts.set(id, weight * Math.min(one, other));
    shared += weight * Math.min(one, other);
    all += weight * Math.max(one, other);
  }
  if (all === 0) return undefined;
  for (const [id, part] of parts) parts.set(id, part / all);
  return { value: isSame ? 1 : Math.min(shared / all, 1 - Number.EPSILON), parts };
}

/**
 * The ids of both weeks in order, each with its two counts. In order, so that the sums, and with them
 * the echo, do not depend on which week comes first.
 */
function inStep(left: Counts, right: Counts): [id: string, one: number, other: number][] {
  const [ones, others] = [[...left], [...right]];
  const steps: [string, number, number][] = [];
  let [at, to] = [0, 0];
  for (;;) {
    const [one, other] = [ones[at], others[to]];
    if (!one && !other) return steps;
    if (one && (!other || one[0] < other[0])) {
      steps.push([one[0], one[1], 0]);
      at += 1;
    } else if (other && (!one || other[0] < one[0])) {
      steps.push([other[0], 0, other[1]]);
      to += 1;
    } else if (one && other) {
      steps.push([one[0], one[1], other[1]]);
      at += 1;
      to += 1;
    }
  }
}

/** How often each id of each aspect is on in a week, staples left out. */
export function aspectCounts(week: ShownWeek): ReadonlyMap<EchoAspect, Counts> {
  const kept = countsOfWeek.get(week);
  if (kept) return kept;
  const items = week.items.filter((item) => !item.isStaple);
  const counts = new Map<EchoAspect, Counts>([
    ["foods", tally(items.map(({ foodId }) => foodId))],
    ["families", tally(items.map(({ familyId }) => familyId))],
    ["tricks", tally(items.flatMap(({ trickIds }) => trickIds))],
    ["theme", tally(themeIds(week))],
  ]);
  countsOfWeek.set(week, counts);
  return counts;
}

/** What a week's theme is compared by: itself and its motifs, each once. */
export function themeIds(week: Pick<ShownWeek, "themeId" | "motifs">): string[] {
  const motifs = [...new Set(week.motifs)].map((motif) => `motif:${motif}`);
  return week.themeId === null ? motifs : [`theme:${week.themeId}`, ...motifs];
}

/** How often each id stands in a list, in the order of the ids. */
function tally(ids: readonly string[]): Counts {
  const counts = new Map<string, number>();
  for (const id of [...ids].sort()) counts.set(id, (counts.get(id) ?? 0) + 1);
  return counts;
}
