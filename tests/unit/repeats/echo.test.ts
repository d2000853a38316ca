import { describe, expect, test } from "vitest";
import {
  closestWeeks,
  describeEcho,
  distinctivenessOf,
  echoOf,
  nearThemes,
} from "#lib/repeats/index.ts";
import { weekOf } from "./weeks.ts";

const even = () => 1;

describe("echo", () => {
  test("is the weighted Jaccard similarity worked by hand", () => {
    const left = weekOf("2026-03-02", ["fig", "fig", "kale", "corn"]);
    const right = weekOf("2026-03-09", ["fig", "kale", "plum"]);
    // Foods: min 1+1 = 2, max 2+1+1+1 = 5; families are the same here. Tricks and themes: none.
    expect(echoOf(left, right, even).value).toBeCloseTo(2 / 5, 12);
  });

  test("weighs a rare food more than a common one", () => {
    const common = Array.from({ length: 10 }, (_, n) => weekOf(`2025-0${1 + (n % 9)}-06`, ["egg"]));
    const rare = weekOf("2025-11-03", ["fig", "plum"]);
    const tells = distinctivenessOf([...common, rare]);
    const now = weekOf("2026-03-02", ["fig", "egg"]);
    const first = common[0];
    expect(first && echoOf(now, first, tells).value).toBeLessThan(echoOf(now, rare, tells).value);
  });

  test("leaves staples out", () => {
    const left = weekOf("2026-03-02", ["fig", "water"]);
    const items = left.items.map((one) => ({ ...one, isStaple: one.foodId === "water" }));
    expect(echoOf({ ...left, items }, weekOf("2026-03-09", ["fig"]), even).value).toBe(1);
  });

  test("tells themes apart that share all motifs", () => {
    const left = weekOf("2026-03-02", ["fig"], { themeId: "night-train", motifs: ["train"] });
    const right = { ...left, themeId: "mail-train" };
    expect(echoOf(left, right, even).value).toBeLessThan(1);
  });

  test("names reasons whose shares add up to it", () => {
    const left = weekOf("2026-03-02", ["fig", "kale"], { motifs: ["sea"] });
    const right = weekOf("2026-03-09", ["fig", "corn"], { motifs: ["sea"] });
    const echo = echoOf(left, right, even);
    const sum = echo.reasons.reduce((total, { share }) => total + share, 0);
    expect(sum).toBeCloseTo(echo.value, 12);
    expect(describeEcho(right, echo, (_, id) => id)).toMatch(
      /^\d+ % like the week of Mon 9 March 2026: /,
    );
  });

  test("finds the closest earlier weeks and none that come later", () => {
    const now = weekOf("2026-03-09", ["fig", "kale", "corn"]);
    const twin = weekOf("2025-03-03", ["fig", "kale", "corn"]);
    const some = weekOf("2025-06-02", ["fig"]);
    const other = weekOf("2025-07-07", ["plum"]);
    const later = weekOf("2026-04-06", ["fig", "kale", "corn"]);
    const found = closestWeeks(now, [some, later, other, twin], 3);
    expect(found.map(({ week }) => week.week)).toEqual(["2025-03-03", "2025-06-02"]);
    expect(found[0]?.echo.value).toBe(1);
  });
});

describe("near themes", () => {
  const moon = { id: "moon", name: "Moon Base", motifs: ["moon", "star", "rocket"] };
  test("are found by shared motifs and by words in any number", () => {
    const sky = { id: "sky", name: "Night Sky", motifs: ["moon", "star"] };
    const bases = { id: "bases", name: "The Base of Moons", motifs: [] };
    const farm = { id: "farm", name: "Farm", motifs: ["cow"] };
    const found = nearThemes(moon, [farm, sky, bases, moon]);
    expect(found.map(({ theme }) => theme.id)).toEqual(["bases", "sky"]);
    expect(found[1]?.sharedMotifs).toEqual(["moon", "star"]);
  });
});
