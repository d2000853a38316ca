import type { IndexedProblem } from "./indexed.ts";

/** Minutes and cents over a limit that count as one broken rule. */
const MINUTES_STEP = 2;
const CENTS_STEP = 100;

/** Counts what hard rules limit and how far a plan is beyond them. */
export class Tally {
  /** Breaches, larger ones counting more. */
  broken: number;
  private readonly indexed: IndexedProblem;
  private readonly rests: Int32Array;
  private readonly restTotals: Int32Array;
  private readonly quotas: readonly Int32Array[];
  private readonly minutes: Float64Array;
  private readonly costs: Float64Array;
  private readonly newInLunch: Int32Array;
  private readonly newInWeek: Int32Array;

  constructor(indexed: IndexedProblem) {
    const { dayCount, weekCount, rests, quotas, cells, problem } = indexed;
    this.indexed = indexed;
    this.rests = new Int32Array(rests.length * dayCount);
    this.restTotals = new Int32Array(rests.length);
    this.quotas = quotas.map(({ isWeekly }) => new Int32Array(isWeekly ? weekCount : dayCount));
    this.minutes = new Float64Array(dayCount);
    this.costs = new Float64Array(weekCount);
    this.newInLunch = new Int32Array(dayCount);
    this.newInWeek = new Int32Array(weekCount);
    this.broken =
      dayCount * cells.filter(({ isRequired }) => isRequired).length +
      quotas.reduce((sum, { min, units }) => sum + min * units.length, 0) +
      weekCount * problem.newFoods.perWeekMin;
  }

  /** A required cell gained or lost its item. */
  countEmpty(before: number, after: number): void {
    this.broken += (after < 0 ? 1 : 0) - (before < 0 ? 1 : 0);
  }

  /** One item more (1) or less (-1) on a day. */
  change(day: number, week: number, item: number, sign: 1 | -1): void {
    const { allowed, itemCount, minutes, costs, minutesMax, budgets } = this.indexed;
    if (!allowed[day * itemCount + item]) this.broken += sign;
    this.changeRests(day, item, sign);
    this.changeQuotas(day, week, item, sign);
    this.changeSum(this.minutes, day, sign * (minutes[item] ?? 0), minutesMax, MINUTES_STEP);
    this.changeSum(this.costs, week, sign * (costs[item] ?? 0), budgets, CENTS_STEP);
    if (this.indexed.isNew[item]) this.changeNew(day, week, sign);
  }

  private changeRests(day: number, item: number, sign: 1 | -1): void {
    const { rests, restsOfItem, dayCount } = this.indexed;
    for (const position of restsOfItem[item] ?? []) {
      const from = position * dayCount;
      this.restTotals[position] = (this.restTotals[position] ?? 0) + sign;
      this.rests[from + day] = (this.rests[from + day] ?? 0) + sign;
      // Most groups hold nothing else: then there is nothing to be near to.
      if ((this.restTotals[position] ?? 0) === (sign === 1 ? 1 : 0)) continue;
      const last = rests[position]?.last[day] ?? day;
      let near = sign === 1 ? -1 : 0;
      for (let other = rests[position]?.first[day] ?? day; other <= last; other += 1) {
        near += this.rests[from + other] ?? 0;
      }
      this.broken += sign * near;
    }
  }

  private changeQuotas(day: number, week: number, item: number, sign: 1 | -1): void {
    for (const position of this.indexed.quotasOfItem[item] ?? []) {
      const quota = this.indexed.quotas[position];
      const counts = this.quotas[position];
      if (!quota || !counts) continue;
      const unit = quota.isWeekly ? week : day;
      if (!quota.isOn[unit]) continue;
      const before = counts[unit] ?? 0;
      counts[unit] = before + sign;
      this.broken +=
        beyond(before + sign, quota.min, quota.max) - beyond(before, quota.min, quota.max);
    }
  }

  private changeSum(
    sums: Float64Array,
    unit: number,
    by: number,
    limits: Float64Array,
    step: number,
  ): void {
    const before = sums[unit] ?? 0;
    const limit = limits[unit] ?? Infinity;
    sums[unit] = before + by;
    this.broken += breach(before + by, limit, step) - breach(before, limit, step);
  }

  private changeNew(day: number, week: number, sign: 1 | -1): void {
    const { perLunchMax, perWeekMax, perWeekMin } = this.indexed.problem.newFoods;
    const lunch = this.newInLunch[day] ?? 0;
    const all = this.newInWeek[week] ?? 0;
    this.newInLunch[day] = lunch + sign;
    this.newInWeek[week] = all + sign;
    this.broken += beyond(lunch + sign, 0, perLunchMax) - beyond(lunch, 0, perLunchMax);
    this.broken += beyond(all + sign, perWeekMin, perWeekMax) - beyond(all, perWeekMin, perWeekMax);
  }
}

function beyond(count: number, min: number, max: number): number {
  return Math.max(0, min - count) + Math.max(0, count - max);
}

/** Whole steps, so that repeated sums leave no dust: a millionth over is no breach. */
function breach(sum: number, limit: number, step: number): number {
  return sum <= limit + 1e-6 ? 0 : Math.ceil((sum - limit - 1e-6) / step);
}
