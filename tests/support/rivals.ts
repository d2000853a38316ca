import { groupBy } from "#lib/base/index.ts";
import { dayNumber, type Day } from "#lib/calendar/index.ts";
import { eatenShare, estimateAll, logLoss, type Verdict } from "#lib/reactions/index.ts";

/** Foretells the share eaten at later verdicts from earlier ones. */
export type Rival = (past: readonly Verdict[], today: Day) => (verdict: Verdict) => number;

const inside = (share: number): number => Math.min(0.98, Math.max(0.02, share));
const shareOf = ({ eaten }: Verdict): number => (eaten === null ? 0.5 : eatenShare(eaten));
const mean = (verdicts: readonly Verdict[], hits: number, trials: number): number =>
  (verdicts.reduce((sum, verdict) => sum + shareOf(verdict), hits) || 0) /
  (verdicts.length + trials);
const cellOf = (verdict: Verdict): string => `${verdict.childId} ${verdict.foodId}`;

/** (a) Always the child's mean. */
export const childMean: Rival = (past) => {
  const byChild = groupBy(past, ({ childId }) => childId);
  return ({ childId }) => inside(mean(byChild.get(childId) ?? [], 0.6, 1));
};

/** (b) The last verdict on the food, kept as far from certainty as serves it best (0.2–0.8). */
export const lastVerdict: Rival = (past, today) => {
  const byCell = groupBy(past, cellOf);
  const fallback = childMean(past, today);
  return (verdict) => {
    const last = byCell.get(cellOf(verdict))?.at(-1);
    return last ? 0.2 + 0.6 * shareOf(last) : fallback(verdict);
  };
};

/** (c) The raw mean of the food's own verdicts, half a verdict added to each end; else the child's. */
export const rawMean: Rival = (past, today) => {
  const byCell = groupBy(past, cellOf);
  const fallback = childMean(past, today);
  return (verdict) => {
    const own = byCell.get(cellOf(verdict));
    return own ? inside(mean(own, 0.5, 1)) : fallback(verdict);
  };
};

/**
 * The formula this work set out to beat: food in family in child, two strengths chosen on a grid by
 * foretelling each verdict from the earlier ones, eaten only; a half-life when given.
 */
export const nestedMeans =
  (halfLifeDays: number): Rival =>
  (past, today) => {
    const trail = past.map((verdict) => ({
      keys: keysOf(verdict),
      on: dayNumber(verdict.day),
      share: shareOf(verdict),
    }));
    let best = { loss: Infinity, food: 6, family: 12 };
    for (const food of [1, 2, 4, 8])
      for (const family of [4, 8, 16]) {
        const { loss } = nested(trail, halfLifeDays, food, family);
        if (loss < best.loss) best = { loss, food, family };
      }
    const { predict } = nested(trail, halfLifeDays, best.food, best.family);
    return (verdict) => predict(keysOf(verdict), dayNumber(today));
  };

type Bin = { s: number; n: number; on: number };
type Keys = readonly [child: string, family: string, food: string];
type Step = { readonly keys: Keys; readonly on: number; readonly share: number };

function keysOf({ childId, familyId, foodId }: Verdict): Keys {
  return [childId, `${childId} ${familyId}`, `${childId} ${familyId} ${foodId}`];
}

function nested(trail: readonly Step[], halfLife: number, k1: number, k2: number) {
  const bins = new Map<string, Bin>();
  const at = (key: string, on: number): Bin => {
    let bin = bins.get(key);
    if (!bin) {
      bin = { s: 0, n: 0, on };
      bins.set(key, bin);
    }
    const keep = 2 ** ((bin.on - on) / halfLife);
    bin.s *= keep;
    bin.n *= keep;
    bin.on = on;
    return bin;
  };
  const predict = ([childKey, familyKey, foodKey]: Keys, on: number): number => {
    const [child, family, food] = [at(childKey, on), at(familyKey, on), at(foodKey, on)];
    const m = (child.s + 3) / (child.n + 5);
    const mg = (family.s - food.s + k2 * m) / (family.n - food.n + k2);
    return inside((food.s + k1 * mg) / (food.n + k1));
  };
  let loss = 0;
  for (const { keys, on, share } of trail) {
    loss += logLoss(share, predict(keys, on));
    for (const key of keys) {
      const bin = at(key, on);
      bin.s += share;
      bin.n += 1;
    }
  }
  return { predict, loss };
}

/** What the software does. */
export const learned: Rival = (past, today) => {
  const { of } = estimateAll(past, { today });
  return ({ childId, foodId, familyId }) => of(childId, foodId, familyId).estimate;
};
