import { partsOf, type Day } from "#lib/calendar/index.ts";

/** Number of faces a child chooses from. */
export type FacePoints = 3 | 5 | 7;

/** One face of a scale. */
export type FaceStep = {
  /** 1 is the least liked. */
  readonly point: number;
  readonly word: string;
  /** The common axis, 0–100. */
  readonly value: number;
};

/**
 * Words per point, least liked first. The 7-point words are the children's word scale of Peryam & Kroll
 * (Kroll 1990, Food Technology 44(11):78–86; from memory: versions differ in the pair they drop).
 * The 3- and 5-point words are the house's own, for a face that is unsure rather than cross.
 */
const WORDS: Record<FacePoints, readonly string[]> = {
  3: ["Not today", "So-so", "Yum"],
  5: ["Not for me", "Not really", "It’s okay", "Good", "Love it"],
  7: [
    "Super bad",
    "Really bad",
    "Bad",
    "Maybe good or maybe bad",
    "Good",
    "Really good",
    "Super good",
  ],
};

/**
 * The faces of a scale, least liked first, each at (i − 1) / (n − 1) × 100 on the common axis.
 * Source of the idea of a common axis: Chen, Resurreccion & Paguio 1996, J. Sensory Studies 11.
 */
export function faceScale(points: FacePoints): readonly FaceStep[] {
  return WORDS[points].map((word, index) => ({
    point: index + 1,
    word,
    value: faceValue(index + 1, points),
  }));
}

/** Point `point` (1 … points) on the 0–100 axis; throws outside the scale. */
export function faceValue(point: number, points: FacePoints): number {
  if (!Number.isInteger(point) || point < 1 || point > points)
    throw new RangeError(`A face from 1 to ${points} was expected, not ${point}.`);
  return ((point - 1) / (points - 1)) * 100;
}

/** The face of a scale nearest to a value of the common axis, the kinder of two equally near. */
export function nearestFace(value: number, points: FacePoints): FaceStep {
  const within = Math.min(100, Math.max(0, value));
  const index = Math.round((within / 100) * (points - 1));
  const step = faceScale(points)[index];
  if (!step) throw new RangeError(`${value} is not on the 0–100 axis.`);
  return step;
}

/**
 * Points for a child's age: 3 at 36–47 months, 5 at 48–59, 7 from 60 on. Below 36 months no scale
 * is published, so the shortest is used. A number set by the user for the child comes first.
 * Source: Chen, Resurreccion & Paguio 1996, J. Sensory Studies 11 (n = 79, 36–71 months).
 */
export function facePointsFor(ageMonths: number | null, chosen?: FacePoints | null): FacePoints {
  if (chosen) return chosen;
  if (ageMonths === null) return 5;
  if (ageMonths < 48) return 3;
  return ageMonths < 60 ? 5 : 7;
}

/** Whole months from a birth month (`YYYY-MM`, its last day taken, so never too old) to a day. */
export function ageInMonths(birthMonth: string, on: Day): number {
  const [year, month] = partsOf(on);
  const born = Number(birthMonth.slice(0, 4)) * 12 + Number(birthMonth.slice(5, 7));
  return Math.max(0, year * 12 + month - born - 1);
}
