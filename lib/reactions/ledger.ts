import { groupBy } from "#lib/base/index.ts";
import { mondayOf, type Day } from "#lib/calendar/index.ts";
import type { Acceptance } from "./estimate.ts";
import type { StandingKind } from "./standing.ts";
import { eatenShare, wasteShare, type Verdict } from "./verdict.ts";

/** A verdict with what the ledger groups and prices it by. */
export type LedgerLine = {
  readonly verdict: Verdict;
  readonly part: string;
  /** What that child's amount cost, in cents; null when no price is known. */
  readonly cents: number | null;
};

/** Eaten share of a group of verdicts. */
export type ShareEaten = { readonly share: number; readonly verdicts: number };

/** Mean eaten share by part, verdicts without an amount left out. */
export function eatenByPart(lines: readonly LedgerLine[]): Map<string, ShareEaten> {
  return meansOf(lines, ({ part }) => part);
}

/** Mean eaten share by week (its Monday), in order. */
export function eatenByWeek(lines: readonly LedgerLine[]): Map<Day, ShareEaten> {
  return eatenByPeriod(lines, mondayOf);
}

/** Mean eaten share by period, named by the day it begins on, in order: for spans too long for weeks. */
export function eatenByPeriod(
  lines: readonly LedgerLine[],
  startOf: (day: Day) => Day,
): Map<Day, ShareEaten> {
  const means = meansOf(lines, ({ verdict }) => startOf(verdict.day));
  return new Map([...means].sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** Money that came back, and how much of it all could be priced. */
export type Waste = {
  readonly wastedCents: number;
  readonly packedCents: number;
  /** Verdicts left out because no price or no amount is known. */
  readonly unpriced: number;
};

/** Waste in money: each price times the share that came back. Cents, not rounded until the end. */
export function wasteOf(lines: readonly LedgerLine[]): Waste {
  let [wasted, packed, unpriced] = [0, 0, 0];
  for (const { verdict, cents } of lines) {
    if (cents === null || verdict.eaten === null) unpriced += 1;
    else {
      wasted += cents * wasteShare(verdict.eaten);
      packed += cents;
    }
  }
  return { wastedCents: Math.round(wasted), packedCents: Math.round(packed), unpriced };
}

/** Foods of one child by standing, the surest liked first. */
export function byStanding(
  met: readonly Acceptance[],
  childId: string,
): Map<StandingKind, Acceptance[]> {
  const own = met.filter((acceptance) => acceptance.childId === childId);
  return groupBy(
    own.sort((a, b) => b.estimate - a.estimate),
    ({ standing }) => standing.kind,
  );
}

/** New foods of a child from a day on: how many were met, and how many are dependable by now. */
export function newFoods(
  met: readonly Acceptance[],
  childId: string,
  from: Day,
): { readonly tried: number; readonly stayed: number } {
  const fresh = met.filter(
    ({ childId: child, history }) => child === childId && history && history.firstDay >= from,
  );
  return {
    tried: fresh.length,
    stayed: fresh.filter(({ standing }) => standing.kind === "dependable").length,
  };
}

function meansOf<Key>(
  lines: readonly LedgerLine[],
  keyOf: (line: LedgerLine) => Key,
): Map<Key, ShareEaten> {
  const seen = lines.filter(({ verdict }) => verdict.eaten !== null);
  const groups = groupBy(seen, keyOf);
  return new Map(
    [...groups].map(([key, group]) => {
      const total = group.reduce((sum, line) => sum + eatenShare(line.verdict.eaten ?? 0), 0);
      return [key, { share: total / group.length, verdicts: group.length }];
    }),
  );
}
