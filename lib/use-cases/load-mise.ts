import {
  clockTime,
  day,
  mondayOf,
  wallClock,
  type ClockTime,
  type Day,
} from "#lib/calendar/index.ts";
import type { Appliance, Colour } from "#lib/catalog/index.ts";
import { planKitchen, waysOut, type KitchenPlan, type Placed } from "#lib/kitchen/index.ts";
import {
  keepUntilWritten,
  readEpisode,
  readSettings,
  readStepTicks,
  type EpisodeRecord,
  type LunchRecord,
  type StepTick,
} from "#lib/db/index.ts";
import type { Context } from "./context.ts";
import { describeProof, describeStep, describeTroubles, describeWayOut } from "./describe-mise.ts";
import { stageOf, type Stage } from "./episode-stage.ts";
import { kitchenOf, onTheAxis, readSteps } from "./kitchen-day.ts";

/** A step as pages show it; `from` and `to` are minutes from midnight of the lunch's day. */
export type MiseStep = {
  readonly id: string;
  readonly line: string;
  readonly about: string;
  readonly minutes: number;
  readonly handsOn: boolean;
  readonly appliance: Appliance;
  readonly from: number;
  readonly to: number;
  readonly starts: ClockTime;
  readonly ends: ClockTime;
  readonly cook: number | null;
  readonly unit: number | null;
  readonly slack: number;
  readonly isCritical: boolean;
  /** Minutes recorded that the estimate rests on; 0: the usual ones (common practice). */
  readonly recordings: number;
  readonly colour: Colour | null;
  readonly tick: { readonly at: ClockTime; readonly minutes: number | null } | null;
};

export type MiseView = {
  readonly date: Day;
  readonly lunchId: string;
  readonly isPacked: boolean;
  readonly angle: string;
  readonly episode: { readonly number: number; readonly title: string; readonly stage: Stage };
  readonly evening: readonly MiseStep[];
  readonly morning: readonly MiseStep[];
  /** Ticked off already, where the rest was planned anew from a time on. */
  readonly done: readonly { readonly id: string; readonly line: string; readonly at: ClockTime }[];
  readonly times: {
    readonly eveningFrom: ClockTime;
    readonly eveningLatest: ClockTime | null;
    readonly eveningEnd: ClockTime | null;
    readonly latestStart: ClockTime;
    readonly packing: ClockTime | null;
    readonly departure: ClockTime;
  };
  readonly cooks: number;
  readonly handsOnMinutes: number;
  readonly handsOnMinutesMax: number;
  readonly proof: string;
  readonly eveningProof: string | null;
  readonly critical: readonly string[];
  readonly troubles: readonly string[];
  /** What to let go when the morning begins so many minutes late. */
  readonly planB: readonly { readonly late: number; readonly sentence: string }[];
  readonly from: ClockTime | null;
  readonly zone: string;
  readonly dayBefore: Day | undefined;
  readonly dayAfter: Day | undefined;
};

const LATE_MINUTES = [5, 10, 15, 20] as const;

/**
 * The prep of one lunch, night before and morning; with `from`, what is not ticked off yet, planned
 * anew from that time on. Undefined when no lunch is pencilled for the day. `machineZone` is used where
 * the settings name no zone.
 */
export async function loadMise(
  context: Context,
  date: Day,
  machineZone: string,
  from?: ClockTime,
): Promise<MiseView | undefined> {
  const { db } = context;
  const episode = await readEpisode(db, mondayOf(date));
  const lunch = episode?.lunches.find((one) => one.date === date);
  if (!episode || !lunch) return undefined;
  const [settings, ticks, before, after] = await Promise.all([
    readSettings(db),
    readStepTicks(db, lunch.id),
    db.lunch.findFirst({
      where: { date: { lt: date } },
      orderBy: { date: "desc" },
      select: { date: true },
    }),
    db.lunch.findFirst({
      where: { date: { gt: date } },
      orderBy: { date: "asc" },
      select: { date: true },
    }),
  ]);
  const zone = settings.timeZone ?? machineZone;
  const kitchen = kitchenOf(settings);
  const now = from === undefined ? undefined : onTheAxis(from, kitchen);
  const { steps, plan, planB } = await keepUntilWritten(db, `mise ${date} ${from ?? ""}`, () =>
    planLunch(context, lunch, kitchen, ticks, now),
  );
  const view = stepViewer(lunch, ticks, zone);
  const planned = new Set([...plan.evening, ...plan.morning].map(({ step }) => step.id));
  return {
    date,
    lunchId: lunch.id,
    isPacked: lunch.isPacked,
    angle: lunch.angle,
    episode: titled(episode),
    evening: plan.evening.map(view),
    morning: plan.morning.map(view),
    done: steps
      .filter(({ id }) => !planned.has(id) && ticks.some(({ stepKey }) => stepKey === id))
      .map((step) => ({
        id: step.id,
        line: describeStep(step),
        at: tickedAt(step.id, ticks, zone),
      })),
    times: timesOf(plan, settings),
    cooks: settings.cooks,
    handsOnMinutes: plan.handsOn.at,
    handsOnMinutesMax: settings.morningMinutes,
    proof: describeProof(plan.getUp, plan.morning.length),
    eveningProof: eveningProofOf(plan),
    critical: plan.morning.filter((one) => one.isCritical).map(({ step }) => describeStep(step)),
    troubles: describeTroubles(plan, steps, {
      morningFrom: kitchen.morningFrom,
      hasBegun: now !== undefined && now >= kitchen.morningFrom,
    }),
    planB,
    from: from ?? null,
    zone,
    dayBefore: before ? day(before.date) : undefined,
    dayAfter: after ? day(after.date) : undefined,
  };
}

async function planLunch(
  { db }: Context,
  lunch: LunchRecord,
  kitchen: ReturnType<typeof kitchenOf>,
  ticks: readonly StepTick[],
  now: number | undefined,
) {
  const steps = await readSteps(db, lunch);
  const isDone = new Set(ticks.map(({ stepKey }) => stepKey));
  const left = now === undefined ? steps : steps.filter(({ id }) => !isDone.has(id));
  const plan = planKitchen(left, kitchen, now === undefined ? {} : { now });
  const morning = plan.morning.map(({ step }) => step);
  const asked = plan.lateBy > 0 ? [plan.lateBy] : LATE_MINUTES;
  const ways = waysOut(morning, kitchen, asked);
  // One line says it where more minutes ask for the same.
  const planB = asked.flatMap((late, index) => {
    const sentence = describeWayOut(late, ways[index], morning);
    const before = index === 0 ? undefined : ways[index - 1];
    const isSame = before !== undefined && before.minutes === ways[index]?.minutes;
    return isSame && before.minutes < late && (asked[index - 1] ?? 0) > before.minutes
      ? []
      : [{ late, sentence }];
  });
  return { steps, plan, planB: morning.length === 0 ? [] : planB };
}

function titled(episode: EpisodeRecord): MiseView["episode"] {
  const title = episode.theme?.name ?? (episode.workingTitle || "Untitled week");
  return { number: episode.number, title, stage: stageOf(episode) };
}

function timesOf(
  plan: KitchenPlan,
  settings: Awaited<ReturnType<typeof readSettings>>,
): MiseView["times"] {
  const packing = plan.morning.find(({ step }) => step.kind === "pack");
  const clockOrNull = (minutes: number | undefined): ClockTime | null =>
    minutes === undefined ? null : clockTime(minutes);
  return {
    eveningFrom: settings.eveningFrom,
    eveningLatest: clockOrNull(plan.eveningLatest),
    eveningEnd: clockOrNull(plan.eveningEnd?.at),
    latestStart: clockTime(plan.getUp.at),
    packing: clockOrNull(packing?.start),
    departure: settings.departure,
  };
}

function eveningProofOf({ eveningEnd, eveningLatest }: KitchenPlan): string | null {
  if (!eveningEnd || eveningLatest === undefined) return null;
  const over = eveningEnd.isProven
    ? `Over by ${clockTime(eveningEnd.at)}, which is proven the soonest.`
    : `Over by ${clockTime(eveningEnd.at)}; the soonest conceivable is ${clockTime(eveningEnd.bound)}.`;
  return `${over} Begun at ${clockTime(eveningLatest)} it still ends by bedtime.`;
}

function stepViewer(lunch: LunchRecord, ticks: readonly StepTick[], zone: string) {
  const colours = new Map(lunch.items.map(({ food }) => [food.id as string, food.colours[0]]));
  return ({ step, start, end, cook, unit, slack, isCritical }: Placed): MiseStep => {
    const tick = ticks.find(({ stepKey }) => stepKey === step.id);
    return {
      ...{ id: step.id, line: describeStep(step), about: step.about, minutes: step.minutes },
      ...{ handsOn: step.handsOn, appliance: step.appliance, from: start, to: end },
      ...{ starts: clockTime(start), ends: clockTime(end), cook, unit, slack, isCritical },
      recordings: step.recordings,
      colour: step.foodId === null ? null : (colours.get(step.foodId) ?? "cream"),
      tick: tick ? { at: tickedAt(step.id, ticks, zone), minutes: tick.minutes } : null,
    };
  };
}

function tickedAt(id: string, ticks: readonly StepTick[], zone: string): ClockTime {
  const tick = ticks.find(({ stepKey }) => stepKey === id);
  return clockTime(tick ? wallClock(tick.at, zone).minutes : 0);
}
