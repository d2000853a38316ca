import { shrinkToMean } from "./shrink.ts";
import { eatenShare, type Verdict } from "./verdict.ts";

/** A verdict and the tricks its item wore. */
export type TrickedVerdict = { readonly verdict: Verdict; readonly trickIds: readonly string[] };

/** How much more was eaten with a trick than without. An association: nobody drew lots. */
export type TrickEffect = {
  readonly trickId: string;
  /** Verdicts with it that have a partner without it. */
  readonly withTrick: number;
  readonly without: number;
  /** Difference of eaten shares for the same child and food, −1 … 1. */
  readonly difference: number;
  /** Ends of its 95 % interval. */
  readonly low: number;
  readonly high: number;
  /** The difference drawn toward that of all tricks, since the luckiest of many looks best. */
  readonly held: number;
};

type Cell = { trickN: number; trickSum: number; plainN: number; plainSum: number; squares: number };

/**
 * Differences within child and food, so that a trick used on favourites gains nothing by it:
 * the Mantel–Haenszel weights n₁ n₀ / (n₁ + n₀) (Greenland & Robins 1985, Biometrics 41:55–68) for
 * means, with the pooled variance within cells. Tricks without a single matched pair of cells are left out. Most helpful first.
 */
export function trickEffects(tricked: readonly TrickedVerdict[]): TrickEffect[] {
  const { cells, cellsOf } = layCells(tricked);
  const raw = [...cellsOf.keys()].sort().flatMap((trickId) => {
    const own = [...(cellsOf.get(trickId) ?? [])].map((key) =>
      split(cells.get(key) ?? [], trickId),
    );
    const effect = combine(
      trickId,
      own.filter(({ trickN, plainN }) => trickN > 0 && plainN > 0),
    );
    return effect ? [effect] : [];
  });
  const { values } = shrinkToMean(
    raw.map(({ difference, variance }) => ({ value: difference, variance })),
  );
  return raw
    .map(({ variance, ...effect }, index) => {
      const margin = 1.96 * Math.sqrt(variance);
      const { difference } = effect;
      const [low, high] = [Math.max(-1, difference - margin), Math.min(1, difference + margin)];
      return { ...effect, low, high, held: values[index] ?? difference };
    })
    .sort((a, b) => b.held - a.held);
}

type Serving = { readonly share: number; readonly trickIds: readonly string[] };

/** Verdicts by child and food, and the pairs that each trick was met in: one walk over ten years. */
function layCells(tricked: readonly TrickedVerdict[]) {
  const cells = new Map<string, Serving[]>();
  const cellsOf = new Map<string, Set<string>>();
  for (const { verdict, trickIds } of tricked) {
    if (verdict.eaten === null) continue;
    const key = `${verdict.childId} ${verdict.foodId}`;
    const serving = { share: eatenShare(verdict.eaten), trickIds };
    const cell = cells.get(key);
    if (cell) cell.push(serving);
    else cells.set(key, [serving]);
    for (const trickId of trickIds) {
      const own = cellsOf.get(trickId);
      if (own) own.add(key);
      else cellsOf.set(trickId, new Set([key]));
    }
  }
  return { cells, cellsOf };
}

function split(servings: readonly Serving[], trickId: string): Cell {
  const cell = { trickN: 0, trickSum: 0, plainN: 0, plainSum: 0, squares: 0 };
  for (const { share, trickIds } of servings) {
    cell.squares += share * share;
    if (trickIds.includes(trickId))
      [cell.trickN, cell.trickSum] = [cell.trickN + 1, cell.trickSum + share];
    else [cell.plainN, cell.plainSum] = [cell.plainN + 1, cell.plainSum + share];
  }
  return cell;
}

/** Variance of one eaten share around its food's mean, and the verdicts that guess is worth. */
const USUAL_VARIANCE = { value: 0.1, verdicts: 5 } as const;

function combine(trickId: string, cells: readonly Cell[]) {
  if (cells.length === 0) return undefined;
  let [weights, sum, errors, squares, freedom] = [0, 0, 0, 0, 0];
  let [withTrick, without] = [0, 0];
  for (const { trickN, trickSum, plainN, plainSum, ...cell } of cells) {
    const weight = (trickN * plainN) / (trickN + plainN);
    weights += weight;
    sum += weight * (trickSum / trickN - plainSum / plainN);
    errors += weight * weight * (1 / trickN + 1 / plainN);
    squares += cell.squares - trickSum ** 2 / trickN - plainSum ** 2 / plainN;
    freedom += trickN + plainN - 2;
    withTrick += trickN;
    without += plainN;
  }
  const { value, verdicts } = USUAL_VARIANCE;
  const within = (squares + value * verdicts) / (freedom + verdicts);
  const variance = (within * errors) / weights ** 2;
  return { trickId, withTrick, without, difference: sum / weights, variance };
}
