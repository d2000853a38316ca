import { inDependenceOrder, planMorning } from "./morning.ts";
import type { Kitchen, KitchenStep } from "./step.ts";

/** Something that can go when it is late, and what that costs. */
export type Sacrifice =
  | { readonly kind: "trick"; readonly stepId: string }
  /** Pack off camera; the full tin alone is filmed. */
  | { readonly kind: "plain-pack" }
  /** Something that is ready to pack steps in for the food. */
  | { readonly kind: "swap"; readonly foodId: string };

/** What to let go, together, and the minutes it wins. */
export type WayOut = { readonly go: readonly Sacrifice[]; readonly minutes: number };

/** How hard it is to let something go (common practice, no source): tricks first, then the filming, then food. */
const REGRET: Readonly<Record<Sacrifice["kind"], number>> = { trick: 2, "plain-pack": 3, swap: 5 };
const TOGETHER_MAX = 3;
const CANDIDATES_MAX = 7;
const BUDGET = 500;

/**
 * What to drop or swap when the morning's work begins late: for each number of minutes asked, the least
 * regretted set of at most three that wins them, and among those the one that wins most; where none wins
 * as much, the one that wins most of all. Every set is solved as a morning of its own, since a step off
 * the critical chain wins nothing. Undefined where nothing can be won.
 */
export function waysOut(
  morning: readonly KitchenStep[],
  kitchen: Kitchen,
  minutesAsked: readonly number[],
): readonly (WayOut | undefined)[] {
  const full = planMorning(morning, kitchen, BUDGET).length;
  const ways = setsOf(candidates(morning))
    .map((go) => ({
      go: [...go].sort((a, b) => REGRET[a.kind] - REGRET[b.kind]),
      minutes: full - planMorning(without(morning, go), kitchen, BUDGET).length,
      regret: go.reduce((sum, { kind }) => sum + REGRET[kind], 0),
    }))
    .filter(({ minutes }) => minutes > 0)
    .sort((a, b) => a.regret - b.regret || b.minutes - a.minutes);
  const most = Math.max(...ways.map(({ minutes }) => minutes));
  return minutesAsked.map((asked) => {
    const way = ways.find(({ minutes }) => minutes >= Math.min(asked, most));
    return way && { go: way.go, minutes: way.minutes };
  });
}

/** Everything that could go, the longest first. */
function candidates(morning: readonly KitchenStep[]): Sacrifice[] {
  const foods = new Map<string, number>();
  for (const { kind, foodId, minutes } of morning)
    if (kind === "food" && foodId !== null) foods.set(foodId, (foods.get(foodId) ?? 0) + minutes);
  const tricks = morning.filter(({ kind }) => kind === "trick");
  const weighed: (readonly [number, Sacrifice])[] = [
    ...tricks.map(({ id, minutes }) => [minutes, { kind: "trick", stepId: id }] as const),
    ...[...foods].map(([foodId, minutes]) => [minutes, { kind: "swap", foodId }] as const),
    ...morning.flatMap((step) =>
      step.kind === "pack"
        ? [[step.minutes - plainPack(step), { kind: "plain-pack" }] as const]
        : [],
    ),
  ];
  return weighed
    .sort(([a], [b]) => b - a)
    .slice(0, CANDIDATES_MAX)
    .map(([, sacrifice]) => sacrifice);
}

/** Off camera, packing takes half as long (common practice, no source). */
function plainPack(pack: KitchenStep): number {
  return Math.ceil(pack.minutes / 2);
}

/** Every set of one to three. */
function setsOf(all: readonly Sacrifice[]): (readonly Sacrifice[])[] {
  let sets: (readonly Sacrifice[])[] = [[]];
  for (const one of all)
    sets = [
      ...sets,
      ...sets.filter(({ length }) => length < TOGETHER_MAX).map((set) => [...set, one]),
    ];
  return sets.filter(({ length }) => length > 0);
}

/** The morning with what goes taken out; what waited for it waits for what it waited for. */
function without(
  morning: readonly KitchenStep[],
  go: readonly Sacrifice[],
): readonly KitchenStep[] {
  const isGone = (step: KitchenStep): boolean =>
    go.some(
      (one) =>
        (one.kind === "trick" && one.stepId === step.id) ||
        (one.kind === "swap" && one.foodId === step.foodId),
    );
  const isPlain = go.some(({ kind }) => kind === "plain-pack");
  const instead = new Map<string, readonly string[]>();
  const left: KitchenStep[] = [];
  for (const step of inDependenceOrder(morning)) {
    const after = [...new Set(step.after.flatMap((id) => instead.get(id) ?? [id]))];
    if (isGone(step)) instead.set(step.id, after);
    else if (step.kind === "pack" && isPlain)
      left.push({ ...step, after, minutes: plainPack(step) });
    else left.push({ ...step, after });
  }
  return left;
}
