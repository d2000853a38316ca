import type { IndexedProblem, IndexedRest } from "./indexed.ts";

/** Most appearances, `restDays` apart, that fit on the given days (in order): as early as possible each. */
export function packable(
  dayNumbers: Int32Array,
  days: readonly number[],
  restDays: number,
): number {
  let count = 0;
  let next = -Infinity;
  for (const day of days) {
    const number = dayNumbers[day] ?? 0;
    if (number < next) continue;
    count += 1;
    next = number + Math.max(1, restDays);
  }
  return count;
}

/** A run of consecutive blocks of days and the most appearances of a group in it. */
export type RestSpan = { readonly from: number; readonly to: number; readonly most: number };

/**
 * The spans of blocks in which a rest group binds beyond what shorter spans say already: a span is left
 * out where two parts of it add up to its limit, or a longer one has the same limit. Exact where blocks
 * are single days (windows of consecutive days; the matrix is an interval matrix), a relaxation else.
 */
export function restSpans(
  indexed: IndexedProblem,
  rest: IndexedRest,
  blocks: readonly (readonly number[])[],
): RestSpan[] {
  const count = blocks.length;
  const useful = blocks.map((days) => days.filter((day) => isPossible(indexed, rest, day)));
  const most = (from: number, to: number): number =>
    packable(indexed.dayNumbers, useful.slice(from, to + 1).flat(), rest.restDays);
  const limits = Array.from({ length: count }, (_, from) =>
    Array.from({ length: count - from }, (_, more) => most(from, from + more)),
  );
  const limit = (from: number, to: number): number => limits[from]?.[to - from] ?? 0;
  const spans: RestSpan[] = [];
  for (let from = 0; from < count; from += 1) {
    for (let to = from; to < count; to += 1) {
      const here = limit(from, to);
      const isSum = splits(from, to).some((cut) => limit(from, cut) + limit(cut + 1, to) <= here);
      const isWithin =
        (limit(from - 1, from - 1) > 0 && limit(from - 1, to) === here) ||
        (limit(to + 1, to + 1) > 0 && limit(from, to + 1) === here);
      if (here > 0 && !isSum && !isWithin) spans.push({ from, to, most: here });
    }
  }
  return spans;
}

function isPossible(indexed: IndexedProblem, rest: IndexedRest, day: number): boolean {
  return rest.items.some((item) => indexed.allowed[day * indexed.itemCount + item] === 1);
}

function splits(from: number, to: number): number[] {
  return Array.from({ length: to - from }, (_, place) => from + place);
}
