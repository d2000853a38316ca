import { randomFrom, type Random } from "#lib/base/index.ts";
import { applyLocks, choicesByDay } from "./cell-choices.ts";
import type { IndexedProblem } from "./indexed.ts";
import { PlanState } from "./state.ts";
import { keepsGaps } from "./theme-potential.ts";

/** How long and from which seed to search; steps, not seconds, so that every machine agrees. */
export type SearchOptions = {
  readonly seed: string;
  readonly steps: number;
  /** Themes stay as they are. */
  readonly keepThemes?: boolean;
  /** Only these days change; absent: all. */
  readonly days?: readonly number[];
  /** Items only change days within their week: what each week holds stays. */
  readonly keepCounts?: boolean;
  /** Items worth trying (week * itemCount + item, 1: yes); absent: all. */
  readonly promising?: Uint8Array;
  /** Degrees of the walk in points, from and to; a worse plan by that much is taken 1 time in e. */
  readonly heat?: readonly [from: number, to: number];
};

const USUAL_HEAT = [8, 0.25] as const;

/**
 * Improves a plan in place by simulated annealing (Kirkpatrick, Gelatt, Vecchi 1983): replace an item,
 * exchange two days' items of one part, change a theme. Ends at the best plan it met.
 */
export function searchPlan(state: PlanState, options: SearchOptions): void {
  const walk = startWalk(state, options);
  if (walk.days.length === 0 || options.steps <= 0) return;
  const [hot, cold] = options.heat ?? USUAL_HEAT;
  const cooling = (cold / hot) ** (1 / options.steps);
  const best = { items: state.items.slice(), themes: state.themes.slice(), worth: state.worth };
  let heat = hot;
  for (let step = 0; step < options.steps; step += 1, heat *= cooling) {
    takeStep(walk, heat);
    if (state.worth > best.worth + 1e-9) {
      best.worth = state.worth;
      best.items.set(state.items);
      best.themes.set(state.themes);
    }
  }
  state.load(best.items, best.themes);
}

type Walk = {
  readonly state: PlanState;
  readonly indexed: IndexedProblem;
  readonly random: Random;
  readonly days: readonly number[];
  readonly choices: readonly (readonly number[])[];
  readonly isLocked: Uint8Array;
  readonly keepsCounts: boolean;
  readonly freeWeeks: readonly number[];
};

function startWalk(state: PlanState, options: SearchOptions): Walk {
  const { indexed } = state;
  const open = [...indexed.lockedThemes.keys()].filter((week) => indexed.lockedThemes[week] === -1);
  return {
    state,
    indexed,
    random: randomFrom(options.seed),
    days: options.days ?? [...indexed.weekOfDay.keys()],
    choices: choicesByDay(indexed, options.promising),
    isLocked: lockedPlaces(state),
    keepsCounts: options.keepCounts ?? false,
    freeWeeks: options.keepThemes || indexed.themeCount === 0 ? [] : open,
  };
}

/** Cells that hold locked items in this state. */
function lockedPlaces(state: PlanState): Uint8Array {
  applyLocks(state);
  const isLocked = new Uint8Array(state.items.length);
  const width = state.indexed.cells.length;
  for (const { day, item } of state.indexed.locks) {
    const cell = state.itemsOf(day).indexOf(item);
    if (cell >= 0) isLocked[day * width + cell] = 1;
  }
  return isLocked;
}

function takeStep(walk: Walk, heat: number): void {
  if (walk.keepsCounts) return exchangeInWeek(walk, heat);
  const kind = walk.random.next();
  if (kind < 0.68) replaceItem(walk, heat);
  else if (kind < 0.99 || walk.freeWeeks.length === 0) exchangeDays(walk, heat);
  else changeTheme(walk, heat);
}

function isTaken(walk: Walk, change: number, heat: number): boolean {
  return change >= 0 || walk.random.next() < Math.exp(change / heat);
}

function replaceItem(walk: Walk, heat: number): void {
  const { state, indexed, random } = walk;
  const day = random.pick(walk.days);
  const cell = random.below(indexed.cells.length);
  const place = day * indexed.cells.length + cell;
  const { part, isRequired } = indexed.cells[cell] ?? { part: 0, isRequired: true };
  const choices = walk.choices[day * indexed.itemsOfPart.length + part] ?? [];
  if (walk.isLocked[place] || choices.length === 0) return;
  const before = state.items[place] ?? -1;
  const isEmptied = !isRequired && before >= 0 && random.next() < 0.2;
  const item = isEmptied ? -1 : random.pick(choices);
  const worth = state.worth;
  state.put(day, cell, item);
  if (!isTaken(walk, state.worth - worth, heat)) state.put(day, cell, before);
}

function exchangeDays(walk: Walk, heat: number): void {
  const { indexed, random } = walk;
  const one = random.pick(walk.days);
  const other = random.pick(walk.days);
  const cell = random.below(indexed.cells.length);
  exchange(walk, [one, cell], [other, cell], heat);
}

function exchangeInWeek(walk: Walk, heat: number): void {
  const { indexed, random } = walk;
  const one = random.pick(walk.days);
  const other = random.pick(indexed.daysOfWeek[indexed.weekOfDay[one] ?? 0] ?? [one]);
  const cell = random.below(indexed.cells.length);
  const cells = indexed.cellsOfPart[indexed.cells[cell]?.part ?? 0] ?? [cell];
  exchange(walk, [one, cell], [other, random.pick(cells)], heat);
}

type Place = readonly [day: number, cell: number];

function exchange(walk: Walk, [one, cell]: Place, [other, to]: Place, heat: number): void {
  const { state, isLocked } = walk;
  const width = walk.indexed.cells.length;
  if (one === other || isLocked[one * width + cell] || isLocked[other * width + to]) return;
  const here = state.items[one * width + cell] ?? -1;
  const there = state.items[other * width + to] ?? -1;
  if (here === there) return;
  const worth = state.worth;
  state.put(one, cell, there);
  state.put(other, to, here);
  if (isTaken(walk, state.worth - worth, heat)) return;
  state.put(one, cell, here);
  state.put(other, to, there);
}

function changeTheme(walk: Walk, heat: number): void {
  const { state, indexed, random } = walk;
  const week = random.pick(walk.freeWeeks);
  const before = state.themes[week] ?? -1;
  const theme = random.below(indexed.themeCount);
  if (!indexed.themeAllowed[week * indexed.themeCount + theme]) return;
  if (!keepsGaps(indexed, state.themes, week, theme)) return;
  const worth = state.worth;
  state.setTheme(week, theme);
  if (!isTaken(walk, state.worth - worth, heat)) state.setTheme(week, before);
}
