import { describe, expect, test } from "vitest";
import { convert, CUP_ML, LABEL_CUP_ML, MEASURES, measureOf } from "#lib/catalog/index.ts";
import { EXACT_SIZES, HOUSEHOLD_ML, LABEL_CUP } from "./measures.published.ts";

describe("measures", () => {
  test.each(EXACT_SIZES)("%s is exactly %d", (name, size) => {
    expect(MEASURES[name].size).toBeCloseTo(size, 9);
  });

  test.each(HOUSEHOLD_ML)("%s rounds to the household %d mL", (name, ml, tolerance) => {
    expect(Math.abs(MEASURES[name].size - ml)).toBeLessThanOrEqual(tolerance);
  });

  test("keep the label cup apart from the exact one, 1.44 % smaller", () => {
    expect(LABEL_CUP_ML).toBe(LABEL_CUP);
    expect(LABEL_CUP_ML / CUP_ML - 1).toBeCloseTo(0.0144, 4);
    expect(measureOf("cup")?.name).toBe("cup");
    expect(measureOf("label cups")?.name).toBe("label cup");
  });

  test("sixteen tablespoons are a cup and three teaspoons a tablespoon (NIST SP 430)", () => {
    expect(convert(16, "tbsp", "cup")).toBeCloseTo(1, 12);
    expect(convert(3, "tsp", "tbsp")).toBeCloseTo(1, 12);
  });

  test("of weight and volume do not convert into each other", () => {
    expect(convert(1, "cup", "g")).toBeUndefined();
    expect(convert(1, "lb", "g")).toBe(453.59237);
  });

  test.each([
    ["Tablespoons", "tbsp"],
    ["T", "tbsp"],
    ["t", "tsp"],
    ["tsp.", "tsp"],
    ["lbs", "lb"],
    ["fl. oz.", "fl oz"],
    ["Litres", "l"],
    ["mL", "ml"],
    ["grammes", "g"],
    ["c", "cup"],
  ])("know %s", (word, name) => {
    expect(measureOf(word)?.name).toBe(name);
  });

  test.each(["slice", "clove", "", "gx"])("do not know %j", (word) => {
    expect(measureOf(word)).toBeUndefined();
  });
});
