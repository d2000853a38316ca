import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { clockTime } from "#lib/calendar/index.ts";
import { ALLERGENS, TRAITS } from "#lib/catalog/index.ts";
import {
  BALANCE_SCHEMES,
  checkLunch,
  describeMark,
  schemeWord,
  SchoolRule,
  Severity,
  SOURCES,
  traitWord,
  UNLIMITED_RULE,
  USUAL_CARRYING,
} from "#lib/safety/index.ts";
import { child, FOODS, item, lunch } from "./box.ts";

/** What nothing may say of a food, a child or a parent. */
const PROMISE =
  /\b(safe|safely|harmless|healthy|unhealthy|hypoallergenic|guarantee[sd]?|weight|overweight|bad parent|grade [A-F])\b|(allergen|nut|dairy|egg|soy|gluten|sesame)[- ]free|free (from|of)/i;

function everythingSaid(): string[] {
  const severities = Severity.options;
  const said = FOODS.flatMap((food, index) =>
    checkLunch(lunch(item(food.id, { notFor: index % 5 === 0 ? ["pepper"] : [] })), {
      children: [
        child({
          ageMonths: [30, 50, 65, null][index % 4] ?? null,
          avoidances: ALLERGENS.map((allergen, place) => ({
            allergen,
            severity: severities[(index + place) % severities.length] ?? "avoid",
          })),
        }),
        child({ id: "biscuit", name: "Biscuit" }),
      ],
      rules: [
        SchoolRule.parse({
          ...UNLIMITED_RULE,
          name: "A rule",
          traits: [...TRAITS].slice(0, 9),
          allergens: ["soy"],
        }),
      ],
      journey: {
        carrying: { ...USUAL_CARRYING, packs: index % 3 },
        ...{ departure: clockTime(470), lunchAt: clockTime(735) },
      },
      scheme: BALANCE_SCHEMES[index % BALANCE_SCHEMES.length] ?? "off",
    }),
  );
  return [
    ...new Set(said.flatMap(({ sentence, remedy }) => [sentence, remedy])),
    ...Object.values(SOURCES).flatMap(({ title, where, mark }) => [
      title,
      where,
      describeMark(mark),
    ]),
    ...BALANCE_SCHEMES.map(schemeWord),
    ...TRAITS.map(traitWord),
  ];
}

describe("the words of the checks", () => {
  // Names of two foods say what they are sold as; the rest of the sentence is ours.
  const said = everythingSaid().map((text) =>
    text.replace(/gluten-free (bread|pasta)/gi, "The $1"),
  );
  test("promise nothing of a food and judge nobody", () => {
    expect(said.length).toBeGreaterThan(400);
    expect(said.filter((text) => PROMISE.test(text))).toEqual([]);
    expect(PROMISE.test("this lunch is nut-free"), "the pattern finds what it looks for").toBe(
      true,
    );
  });
  test("are one sentence each, begun with a capital and ended", () => {
    for (const text of said.filter((one) => one.endsWith(".")))
      expect(text.charAt(0)).toBe(text.charAt(0).toUpperCase());
  });
  test("the pages that show them have the caution beside them", () => {
    const app = path.resolve(import.meta.dirname, "../../../app");
    const pages = readdirSync(app, { recursive: true, encoding: "utf8" })
      .filter((file) => file.endsWith("page.tsx"))
      .map((file) => ({ file, text: readFileSync(path.join(app, file), "utf8") }));
    const bearing = pages.filter(({ text }) =>
      /<(ChecksPanel|ChecksForm|WeekBalance)\b/.test(text),
    );
    expect(bearing.length).toBeGreaterThanOrEqual(3);
    for (const { file, text } of bearing)
      expect([file, text.includes("<HealthCaution")]).toEqual([file, true]);
  });
});
