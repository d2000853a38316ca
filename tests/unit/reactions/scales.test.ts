import { describe, expect, test } from "vitest";
import { day } from "#lib/calendar/index.ts";
import {
  ageInMonths,
  eatenFromShare,
  facePointsFor,
  faceScale,
  nearestFace,
  wasteShare,
  type Eaten,
  type FacePoints,
} from "#lib/reactions/index.ts";

describe("faces", () => {
  // Values (i − 1) / (n − 1) × 100; the scales are those of Chen, Resurreccion & Paguio 1996.
  test.each<[FacePoints, number[]]>([
    [3, [0, 50, 100]],
    [5, [0, 25, 50, 75, 100]],
    [7, [0, 16.7, 33.3, 50, 66.7, 83.3, 100]],
  ])("the %d-point scale lies on the common axis", (points, values) => {
    const scale = faceScale(points);
    expect(scale.map(({ value }) => Math.round(value * 10) / 10)).toEqual(values);
    expect(new Set(scale.map(({ word }) => word)).size).toBe(points);
    for (const step of scale) expect(nearestFace(step.value, points)).toEqual(step);
  });
  // Age bands of the same study; the 4-year band is read as 48–59 months.
  test.each<[number | null, FacePoints]>([
    [30, 3],
    [36, 3],
    [47, 3],
    [48, 5],
    [59, 5],
    [60, 7],
    [110, 7],
    [null, 5],
  ])("at %s months a child sees %d faces", (months, points) => {
    expect(facePointsFor(months)).toBe(points);
  });
  test("a number set for the child comes first", () => {
    expect(facePointsFor(110, 5)).toBe(5);
    expect(facePointsFor(40, null)).toBe(3);
  });
  test("a birth month is counted from its end, so that no child is taken for older", () => {
    expect(ageInMonths("2021-03", day("2026-03-11"))).toBe(59);
    expect(ageInMonths("2021-03", day("2026-04-01"))).toBe(60);
    expect(ageInMonths("2026-03", day("2026-03-11"))).toBe(0);
  });
});

describe("the quarter scale", () => {
  // Hanks, Wansink & Just 2014: all, three quarters, half, a quarter or none left.
  test.each<[Eaten, number]>([
    [0, 1],
    [1, 0.75],
    [2, 0.5],
    [3, 0.25],
    [4, 0],
  ])("%d quarters eaten leaves %d", (eaten, left) => {
    expect(wasteShare(eaten)).toBe(left);
    expect(eatenFromShare(1 - left)).toBe(eaten);
  });
  test("a share between two steps goes to the nearer, halves upward", () => {
    expect([0.1, 0.125, 0.37, 0.38, 1.4, -1].map(eatenFromShare)).toEqual([0, 1, 1, 2, 4, 0]);
  });
});
