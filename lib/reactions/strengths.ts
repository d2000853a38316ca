/**
 * How firmly each level of the acceptance model holds its ground, in tastings: the prior of a food
 * weighs as much as that many tastings of it. See `fold.ts` for the formula they stand in.
 */
export type Strengths = {
  /** A child's food against what its family and the other children suggest. */
  readonly food: number;
  /** A child's family of foods against the child's general appetite. */
  readonly family: number;
  /** What the other children make of the same food, against no such link; large: no link. */
  readonly siblings: number;
  /** Days after which a verdict weighs half; Infinity: never. */
  readonly halfLifeDays: number;
  /** Variance between days ÷ variance within a day, after the foods are allowed for. */
  readonly day: number;
  /** Weight of the face beside the eaten share, 0–1. */
  readonly face: number;
  /** Trials that one tasting is worth when the width of an interval is drawn. */
  readonly precision: number;
  /** Tastings that an estimate never gets surer than, since tastes move meanwhile. */
  readonly surest: number;
};

/**
 * Used while the series is too short to tell, and the centre toward which every fitted strength is
 * held. The first two lie amid the ranges measured on simulated series (food 4–8, family 8–16).
 */
export const USUAL_STRENGTHS: Strengths = {
  food: 4,
  family: 8,
  siblings: 12,
  halfLifeDays: 240,
  day: 0.1,
  face: 0.3,
  precision: 1.5,
  surest: 30,
};

/** The child's own appetite, and the series' before any verdict: 3 of 5 eaten, as a prior. */
export const CHILD_PRIOR = { eaten: 3, offers: 5 } as const;

/** α + β of an estimate that rests on so many tastings, the prior's among them. */
export function certainty(
  { precision, surest }: Pick<Strengths, "precision" | "surest">,
  evidence: number,
): number {
  return (precision * evidence * surest) / (evidence + surest);
}
