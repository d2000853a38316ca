import { groupBy } from "#lib/base/index.ts";
import {
  dayFrom,
  daysBetween,
  mondayOf,
  monthStart,
  partsOf,
  weeksLater,
  type Day,
} from "#lib/calendar/index.ts";
import { keepUntilWritten, readChildren, readSettings, type Db } from "#lib/db/index.ts";
import {
  byStanding,
  eatenByPart,
  eatenByPeriod,
  listTryAgain,
  newFoods,
  trickEffects,
  wasteOf,
  type Acceptance,
  type Learned,
  type ShareEaten,
  type StandingKind,
  type TrickEffect,
  type Waste,
} from "#lib/reactions/index.ts";
import type { Context } from "./context.ts";
import { loadLedgerLines, type PricedLine } from "./ledger-lines.ts";
import { loadEstimates } from "./load-estimates.ts";
import type { LedgerSpan } from "./load-ledger.input.ts";
import { readNames, type Names } from "./read-names.ts";
import { loadUsed, type Used } from "./used-so-far.ts";

/** A share eaten by the day a week or month begins on. */
type SharePoint = ShareEaten & { readonly on: Day };
type PartShare = ShareEaten & { readonly part: string };

/** What the ledger's first page says of one child. */
export type ChildSummary = {
  readonly id: string;
  readonly name: string;
  readonly overTime: readonly SharePoint[];
  readonly byPart: readonly PartShare[];
  readonly standings: Readonly<Record<Exclude<StandingKind, "unmet">, number>>;
  readonly newFoods: { readonly tried: number; readonly stayed: number };
  readonly tryAgain: readonly { readonly foodId: string; readonly food: string }[];
};

export type LedgerView = {
  readonly span: LedgerSpan;
  /** First day looked at; null when the series has no verdict. */
  readonly from: Day | null;
  readonly verdictCount: number;
  /** What a point of the charts over time stands for. */
  readonly bin: Bin;
  readonly children: readonly ChildSummary[];
  readonly tricks: readonly (TrickEffect & { readonly name: string })[];
  readonly waste: Waste;
  /** By month, or by quarter where the rest is. */
  readonly wasteOverTime: readonly (Waste & { readonly on: Day })[];
  /** Foods whose leavings cost most, dearest first. */
  readonly dearest: readonly (Waste & { readonly foodId: string; readonly food: string })[];
  readonly used: Used;
  readonly currency: string;
};

type Bin = "week" | "month" | "quarter";
const STARTS: Readonly<Record<Bin, (day: Day) => Day>> = {
  week: mondayOf,
  month: monthStart,
  quarter: (day) => {
    const [year, month] = partsOf(day);
    return dayFrom(year, month - ((month - 1) % 3), 1);
  },
};
/** Longer than this, a series is drawn by quarters. */
const MONTHS_DRAWN_DAYS = 1100;

const SPAN_WEEKS: Readonly<Record<Exclude<LedgerSpan, "all">, number>> = { quarter: 13, year: 52 };
const DEAREST = 6;
const TRY_AGAIN = 5;

/** What the records of a span say, for the ledger's first page; shared until something is written. */
export function loadLedger({ db, today }: Context, span: LedgerSpan): Promise<LedgerView> {
  return keepUntilWritten(db, `ledger ${span} ${today}`, () => readLedger(db, today, span));
}

async function readLedger(db: Db, today: Day, span: LedgerSpan): Promise<LedgerView> {
  const [learned, all, children, settings, names] = await Promise.all([
    loadEstimates({ db, today }),
    loadLedgerLines(db),
    readChildren(db),
    readSettings(db),
    readNames(db),
  ]);
  const earliest = span === "all" ? null : weeksLater(today, -SPAN_WEEKS[span]);
  const lines = all.filter(
    ({ verdict: { day } }) => day <= today && (earliest === null || day >= earliest),
  );
  const from = earliest ?? lines[0]?.verdict.day ?? null;
  const bin = binFor(span, from, today);
  return {
    ...{ span, from, verdictCount: lines.length, bin, currency: settings.currency },
    children: children
      .filter(({ isRetired }) => !isRetired)
      .map(({ id, onScreenName: name }) => {
        const own = lines.filter(({ verdict }) => verdict.childId === id);
        return { id, name, ...summaryOf(id, own, learned, { bin, from, today, names }) };
      }),
    tricks: trickEffects(lines.map(({ verdict }) => ({ verdict, trickIds: verdict.trickIds }))).map(
      (effect) => ({ ...effect, name: names.trick(effect.trickId) }),
    ),
    waste: wasteOf(lines),
    wasteOverTime: wasteOverTime(lines, STARTS[bin === "quarter" ? bin : "month"]),
    dearest: dearestFoods(lines, names),
    used: await loadUsed(db, { from, today, names }),
  };
}

function binFor(span: LedgerSpan, from: Day | null, today: Day): Bin {
  if (span !== "all" || from === null) return "week";
  return daysBetween(from, today) > MONTHS_DRAWN_DAYS ? "quarter" : "month";
}

function summaryOf(
  id: string,
  lines: readonly PricedLine[],
  learned: Learned,
  span: { bin: Bin; from: Day | null; today: Day; names: Names },
): Omit<ChildSummary, "id" | "name"> {
  const binned = eatenByPeriod(lines, STARTS[span.bin]);
  const own = learned.met.filter(({ childId }) => childId === id);
  const standings = byStanding(own, id);
  const count = (kind: StandingKind): number => standings.get(kind)?.length ?? 0;
  return {
    overTime: [...binned].map(([on, share]) => ({ on, ...share })),
    byPart: [...eatenByPart(lines)].map(([part, share]) => ({ part, ...share })),
    standings: {
      dependable: count("dependable"),
      mixed: count("mixed"),
      meeting: count("meeting"),
      resting: count("resting"),
    },
    newFoods: span.from === null ? { tried: 0, stayed: 0 } : newFoods(own, id, span.from),
    tryAgain: listTryAgain(own, span.today)
      .slice(0, TRY_AGAIN)
      .map(({ acceptance }) => nameFood(acceptance, span.names)),
  };
}

function nameFood({ foodId }: Acceptance, names: Names): { foodId: string; food: string } {
  return { foodId, food: names.food(foodId) };
}

function wasteOverTime(
  lines: readonly PricedLine[],
  startOf: (day: Day) => Day,
): LedgerView["wasteOverTime"] {
  return [...groupBy(lines, ({ verdict }) => startOf(verdict.day))].map(([on, own]) => ({
    on,
    ...wasteOf(own),
  }));
}

function dearestFoods(lines: readonly PricedLine[], names: Names): LedgerView["dearest"] {
  return [...groupBy(lines, ({ verdict }) => verdict.foodId)]
    .map(([foodId, own]) => ({ foodId, food: names.food(foodId), ...wasteOf(own) }))
    .sort((one, other) => other.wastedCents - one.wastedCents)
    .slice(0, DEAREST);
}
