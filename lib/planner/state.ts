import type { IndexedProblem } from "./indexed.ts";
import { themePoints } from "./index-themes.ts";
import { Tally } from "./tally.ts";
import { POINTS } from "./weights.ts";

/** Points one broken rule costs in the search; more than any choice can earn. */
const PENALTY = 120;

/**
 * A plan under construction with its points and its broken rules kept up to date by each step. One
 * item in, one item out: what it earns alone, then theme, colours, shops, kin, owed, rests, limits.
 */
export class PlanState {
  readonly indexed: IndexedProblem;
  /** Item in each cell (day * cells + cell), -1: empty. */
  readonly items: Int32Array;
  /** Theme of each week, -1: none. */
  readonly themes: Int32Array;
  /** Points of the aims. */
  points = 0;
  private readonly tally: Tally;
  private readonly fitSums: Float64Array;
  private readonly colours: Int32Array;
  private readonly colourSums: Int32Array;
  private readonly returns: Int32Array;
  private readonly families: Int32Array;
  private readonly owedUsed: Int32Array;
  private readonly shopSets: Int32Array;
  private readonly shopPoints: Float64Array;
  private themesBroken = 0;

  constructor(indexed: IndexedProblem) {
    this.indexed = indexed;
    this.items = new Int32Array(indexed.dayCount * indexed.cells.length).fill(-1);
    this.themes = new Int32Array(indexed.weekCount).fill(-1);
    this.tally = new Tally(indexed);
    this.fitSums = new Float64Array(indexed.dayCount);
    this.colours = new Int32Array(indexed.dayCount * indexed.colourCount);
    this.colourSums = new Int32Array(indexed.dayCount);
    this.returns = new Int32Array(indexed.returns.length);
    this.families = new Int32Array(indexed.weekCount * indexed.familyCount);
    this.owedUsed = new Int32Array(indexed.owed.length);
    this.shopSets = new Int32Array(indexed.weekCount * indexed.shopSets.length);
    this.shopPoints = new Float64Array(indexed.weekCount);
  }

  /** The same plan, to be changed on its own. */
  copy(): PlanState {
    const copy = new PlanState(this.indexed);
    copy.load(this.items, this.themes);
    return copy;
  }

  /** Takes over items and themes. */
  load(items: Int32Array, themes: Int32Array): void {
    const width = this.indexed.cells.length;
    themes.forEach((theme, week) => this.setTheme(week, theme));
    items.forEach((item, place) => this.put(Math.floor(place / width), place % width, item));
  }

  /** How many rules are broken, larger breaches counting more; 0: the plan stands. */
  get broken(): number {
    return this.tally.broken + this.themesBroken;
  }

  /** What the search climbs: points less penalties. */
  get worth(): number {
    return this.points - PENALTY * this.broken;
  }

  /** The item of each cell of a day, -1: empty; a view, not a copy. */
  itemsOf(day: number): Int32Array {
    const width = this.indexed.cells.length;
    return this.items.subarray(day * width, (day + 1) * width);
  }

  /** Puts an item (-1: nothing) in a cell, whatever was there. */
  put(day: number, cell: number, item: number): void {
    const place = day * this.indexed.cells.length + cell;
    const before = this.items[place] ?? -1;
    if (before === item) return;
    if (before >= 0) this.change(day, before, -1);
    if (item >= 0) this.change(day, item, 1);
    this.items[place] = item;
    if (this.indexed.cells[cell]?.isRequired) this.tally.countEmpty(before, item);
    this.settleShops(this.indexed.weekOfDay[day] ?? 0);
  }

  /** Sets the theme of a week (-1: none) and recounts what fits it. */
  setTheme(week: number, theme: number): void {
    const { themeCount, themeValues, daysOfWeek } = this.indexed;
    const before = this.themes[week] ?? -1;
    if (before === theme) return;
    if (before >= 0) this.points -= themeValues[week * themeCount + before] ?? 0;
    if (theme >= 0) this.points += themeValues[week * themeCount + theme] ?? 0;
    this.themes[week] = theme;
    for (const day of daysOfWeek[week] ?? []) this.recountFit(day);
    this.themesBroken = this.countBrokenThemes();
  }

  private change(day: number, item: number, sign: 1 | -1): void {
    const { itemCount, values, weekOfDay } = this.indexed;
    const week = weekOfDay[day] ?? 0;
    this.points += sign * (values[day * itemCount + item] ?? 0);
    this.changeFit(day, week, item, sign);
    this.changeColours(day, item, sign);
    this.changeReturns(item, sign);
    this.changeFamily(week, item, sign);
    this.changeOwed(day, item, sign);
    const set = this.indexed.shopSetOfItem[item] ?? 0;
    if (set > 0) bump(this.shopSets, week * this.indexed.shopSets.length + set, sign);
    this.tally.change(day, week, item, sign);
  }

  private changeFit(day: number, week: number, item: number, sign: 1 | -1): void {
    const theme = this.themes[week] ?? -1;
    if (theme < 0) return;
    const fit = this.indexed.fits[theme * this.indexed.itemCount + item] ?? 0;
    if (fit !== 0) this.setFit(day, (this.fitSums[day] ?? 0) + sign * fit);
  }

  private setFit(day: number, sum: number): void {
    const weight = this.indexed.problem.weights.theme;
    this.points += themePoints(sum, weight) - themePoints(this.fitSums[day] ?? 0, weight);
    this.fitSums[day] = sum;
  }

  private recountFit(day: number): void {
    const { cells, weekOfDay, fits, itemCount } = this.indexed;
    const theme = this.themes[weekOfDay[day] ?? 0] ?? -1;
    let sum = 0;
    for (let cell = 0; theme >= 0 && cell < cells.length; cell += 1) {
      const item = this.items[day * cells.length + cell] ?? -1;
      if (item >= 0) sum += fits[theme * itemCount + item] ?? 0;
    }
    this.setFit(day, sum);
  }

  private changeColours(day: number, item: number, sign: 1 | -1): void {
    const { colourCount, coloursOfItem, problem } = this.indexed;
    const before = this.colourSums[day] ?? 0;
    let sum = before;
    for (const colour of coloursOfItem[item] ?? []) {
      const now = bump(this.colours, day * colourCount + colour, sign);
      if (now === (sign === 1 ? 1 : 0)) sum += sign;
    }
    if (sum === before) return;
    this.colourSums[day] = sum;
    const counted = Math.min(POINTS.coloursMax, sum) - Math.min(POINTS.coloursMax, before);
    this.points += problem.weights.colours * POINTS.colour * counted;
  }

  private changeReturns(item: number, sign: 1 | -1): void {
    const { returns, returnsOfItem } = this.indexed;
    for (const position of returnsOfItem[item] ?? []) {
      const now = bump(this.returns, position, sign);
      const isReturn = sign === 1 ? now > 1 : now > 0;
      if (isReturn) this.points += sign * (returns[position]?.points ?? 0);
    }
  }

  private changeFamily(week: number, item: number, sign: 1 | -1): void {
    const { familyCount, familyOfItem, problem } = this.indexed;
    const now = bump(this.families, week * familyCount + (familyOfItem[item] ?? 0), sign);
    const isRepeat = sign === 1 ? now > 1 : now > 0;
    if (isRepeat) this.points += sign * problem.weights.fresh * POINTS.familyRepeat;
  }

  private changeOwed(day: number, item: number, sign: 1 | -1): void {
    const { owed, owedOfItem } = this.indexed;
    for (const position of owedOfItem[item] ?? []) {
      const entry = owed[position];
      if (!entry || day > entry.lastDay) continue;
      const now = bump(this.owedUsed, position, sign);
      if (now === (sign === 1 ? 1 : 0)) this.points += sign * entry.points;
    }
  }

  /** The easiest tour of a week, once its items have changed. */
  private settleShops(week: number): void {
    const { shopSets, tours } = this.indexed;
    const from = week * shopSets.length;
    let points = 0;
    for (const tour of tours) {
      points = tour.points;
      if (this.isCovered(from, tour.shops)) break;
    }
    this.points += points - (this.shopPoints[week] ?? 0);
    this.shopPoints[week] = points;
  }

  private isCovered(from: number, shops: number): boolean {
    const { shopSets } = this.indexed;
    for (let set = 1; set < shopSets.length; set += 1) {
      const isNeeded = (this.shopSets[from + set] ?? 0) > 0;
      if (isNeeded && ((shopSets[set] ?? 0) & shops) === 0) return false;
    }
    return true;
  }

  private countBrokenThemes(): number {
    const { weekCount, themeCount, themeAllowed, themeGaps, mondayNumbers } = this.indexed;
    let broken = 0;
    for (let week = 0; week < weekCount; week += 1) {
      const theme = this.themes[week] ?? -1;
      if (theme < 0) continue;
      if (!themeAllowed[week * themeCount + theme]) broken += 1;
      for (let later = week + 1; later < weekCount; later += 1) {
        const other = this.themes[later] ?? -1;
        const days = (mondayNumbers[later] ?? 0) - (mondayNumbers[week] ?? 0);
        if (other >= 0 && days < (themeGaps[theme * themeCount + other] ?? 0)) broken += 1;
      }
    }
    return broken;
  }
}

function bump(counts: Int32Array, place: number, sign: number): number {
  const now = (counts[place] ?? 0) + sign;
  counts[place] = now;
  return now;
}
