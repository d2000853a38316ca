import { describe, expect, it, test } from "vitest";
import { readIngredients } from "#lib/catalog/index.ts";

describe("ingredients typed one a line", () => {
  test.each([
    ["200 g flour", "200 g flour"],
    ["flour 200 g", "200 g flour"],
    ["- 1/2 tsp salt", "½ tsp salt"],
    ["2 cups of milk", "2 cups milk"],
    ["2 eggs", "2 eggs"],
    ["1 lemon, the juice", "1 lemon, the juice"],
    ["about 3 tbsp olive oil", "about 3 tbsp olive oil"],
    ["1-2 cloves garlic", "1–2 cloves garlic"],
    ["salt to taste", "salt to taste"],
    ["5-grain flakes", "5-grain flakes"],
    ["12", "12"],
  ])("%j is read as %j", (typed, read) => {
    expect(readIngredients(typed).lines).toEqual([read]);
  });

  test.each([
    ["Makes 16 flatbreads", "16 flatbreads"],
    ["serves 4", "4 servings"],
    ["Serves: 4 people.", "4 servings"],
    ["Yields about 550 g", "about 550 g"],
    ["Makes 1", "1 serving"],
  ])("%j says that it makes %j", (typed, makes) => {
    expect(readIngredients(`200 g flour\n${typed}\n1 egg`)).toEqual({
      ...{ makes, lines: ["200 g flour", "1 egg"] },
    });
  });

  it("takes a line without a number for an ingredient, whatever it begins with", () => {
    expect(readIngredients("for the glaze\nmakes it shine: egg")).toEqual({
      ...{ makes: null, lines: ["for the glaze", "makes it shine: egg"] },
    });
  });
});
