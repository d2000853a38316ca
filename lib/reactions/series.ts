import { dayNumber } from "#lib/calendar/index.ts";
import { eatenShare, isInformative, type Verdict } from "./verdict.ts";

/** Verdicts in the order of their days, laid out in columns so that ten years fold in milliseconds. */
export type Series = {
  readonly verdicts: readonly Verdict[];
  readonly childIds: readonly string[];
  readonly foodIds: readonly string[];
  readonly familyIds: readonly string[];
  readonly childAt: ReadonlyMap<string, number>;
  readonly foodAt: ReadonlyMap<string, number>;
  readonly familyAt: ReadonlyMap<string, number>;
  readonly child: Int32Array;
  readonly food: Int32Array;
  readonly family: Int32Array;
  readonly day: Int32Array;
  /** Eaten share, NaN when unseen. */
  readonly eaten: Float64Array;
  /** Face on the eaten scale, NaN when not asked. */
  readonly face: Float64Array;
  /** Start of each child's day; one more at the end. */
  readonly boxes: Int32Array;
};

/** Lays verdicts out, oldest first, one child's day together. Empty ones are left out. */
export function layOut(given: readonly Verdict[]): Series {
  const verdicts = inOrder(given);
  const [childIds, childAt, child] = number(verdicts, (verdict) => verdict.childId);
  const [foodIds, foodAt, food] = number(verdicts, (verdict) => verdict.foodId);
  const [familyIds, familyAt, family] = number(verdicts, (verdict) => verdict.familyId);
  const day = dayNumbers(verdicts);
  const eaten = column(verdicts, (verdict) =>
    verdict.eaten === null ? Number.NaN : eatenShare(verdict.eaten),
  );
  const face = faceOnEatenScale(verdicts, eaten);
  const boxes: number[] = [];
  for (let i = 0; i < verdicts.length; i += 1)
    if (i === 0 || day[i] !== day[i - 1] || child[i] !== child[i - 1]) boxes.push(i);
  boxes.push(verdicts.length);
  return {
    ...{ verdicts, childIds, foodIds, familyIds, childAt, foodAt, familyAt },
    ...{ child, food, family, day, eaten, face, boxes: Int32Array.from(boxes) },
  };
}

function inOrder(given: readonly Verdict[]): Verdict[] {
  const verdicts = given.filter(isInformative);
  const follows = (a: Verdict, b: Verdict): boolean =>
    a.day > b.day || (a.day === b.day && a.childId >= b.childId);
  const isSorted = verdicts.every((verdict, index) => {
    const before = verdicts[index - 1];
    return before === undefined || follows(verdict, before);
  });
  if (isSorted) return verdicts;
  return verdicts.sort((a, b) =>
    a.day === b.day ? order(a.childId, b.childId) : order(a.day, b.day),
  );
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function number(
  verdicts: readonly Verdict[],
  keyOf: (verdict: Verdict) => string,
): [string[], Map<string, number>, Int32Array] {
  const ids: string[] = [];
  const at = new Map<string, number>();
  const places = new Int32Array(verdicts.length);
  verdicts.forEach((verdict, index) => {
    const key = keyOf(verdict);
    let place = at.get(key);
    if (place === undefined) {
      place = ids.length;
      at.set(key, place);
      ids.push(key);
    }
    places[index] = place;
  });
  return [ids, at, places];
}

/** A column of numbers; a plain loop, since `from` walks an iterator and takes ten times as long. */
function column(verdicts: readonly Verdict[], valueOf: (verdict: Verdict) => number): Float64Array {
  const values = new Float64Array(verdicts.length);
  verdicts.forEach((verdict, index) => {
    values[index] = valueOf(verdict);
  });
  return values;
}

function dayNumbers(verdicts: readonly Verdict[]): Int32Array {
  const numbers = new Int32Array(verdicts.length);
  let last: Verdict | undefined;
  verdicts.forEach((verdict, index) => {
    const isSame = last?.day === verdict.day;
    numbers[index] = isSame ? (numbers[index - 1] ?? 0) : dayNumber(verdict.day);
    last = verdict;
  });
  return numbers;
}

/** Pairs that an identity line is worth when a face is translated to an eaten share. */
const FACE_PRIOR_PAIRS = 20;
/** Variance of a face share, as of a uniform one, for those made-up pairs. */
const FACE_PRIOR_VARIANCE = 1 / 12;

/** Faces on the eaten scale: a least-squares line through the series' own pairs, drawn to identity. */
function faceOnEatenScale(verdicts: readonly Verdict[], eaten: Float64Array): Float64Array {
  let [pairs, sumFace, sumEaten] = [0, 0, 0];
  verdicts.forEach(({ face }, index) => {
    if (face === null || Number.isNaN(eaten[index])) return;
    pairs += 1;
    sumFace += face / 100;
    sumEaten += eaten[index] ?? 0;
  });
  const meanFace = (sumFace + FACE_PRIOR_PAIRS / 2) / (pairs + FACE_PRIOR_PAIRS);
  const meanEaten = (sumEaten + FACE_PRIOR_PAIRS / 2) / (pairs + FACE_PRIOR_PAIRS);
  let top = FACE_PRIOR_PAIRS * FACE_PRIOR_VARIANCE;
  let bottom = top;
  verdicts.forEach(({ face }, index) => {
    if (face === null || Number.isNaN(eaten[index])) return;
    top += (face / 100 - meanFace) * ((eaten[index] ?? 0) - meanEaten);
    bottom += (face / 100 - meanFace) ** 2;
  });
  const slope = Math.max(0, top / bottom);
  return column(verdicts, ({ face }) =>
    face === null
      ? Number.NaN
      : Math.min(1, Math.max(0, meanEaten + slope * (face / 100 - meanFace))),
  );
}
