import { Food, type Part } from "#lib/catalog/index.ts";

/** A food of the house: where it goes, how often it is reached for, and since which week. */
export type Favourite = {
  readonly food: Food;
  readonly part: Part;
  /** 1 usual, 3 often, 0.4 now and then. */
  readonly love: number;
  /** Week of the history (of 52) before which it was never packed. */
  readonly debut: number;
};

/** Days that a food stays out, by part: what is plenty can come back sooner. */
export const REST_DAYS: Readonly<Partial<Record<Part, number>>> = {
  ...{ main: 8, protein: 8, grain: 5, vegetable: 4, fruit: 4, dairy: 4, dip: 4, treat: 5 },
};

/** "id love debut" per part; ids are the catalogue's, and those it lacks are passed over. */
const SHELF: Readonly<Partial<Record<Part, string>>> = {
  main:
    "chicken-breast 2, house-fish-cakes 2, quiche 0.7, tuna-salad 0.8, salmon 1, pancakes 0.7, " +
    "roast-turkey 1, egg-salad 0.7, pasta-salad 1, cheese-pizza-slice 0.8, tofu 0.6 12, " +
    "chicken-drumstick 0.8, cheese-tortellini 0.7 8, waffle 0.5 20, rotisserie-chicken 0.8",
  protein:
    "hard-boiled-egg 3, chickpeas 1.2, deli-turkey 1, deli-ham 1, smoked-salmon 0.6, edamame 1 9, " +
    "white-beans 0.5 16, lentils 0.5 22, crab-sticks 0.4 28",
  grain:
    "rye-bread 2, flour-tortilla 2, pita-bread 1.5, house-flatbread 2, pasta 1.5, white-rice 1.2, " +
    "sourdough-bread 1.2, crispbread 1.5, couscous 0.8, sushi-rice 0.7, whole-wheat-crackers 1, " +
    "mini-bagel 0.7, croissant 0.4, rice-cakes 0.8, quinoa 0.4 18, whole-wheat-roll 0.8, " +
    "focaccia 0.5 10, buttermilk-biscuit 0.4 30",
  vegetable:
    "cucumber-slices 3, carrot-sticks 3, red-pepper-strips 1.5, snap-peas 1.5, cherry-tomatoes 1.5, " +
    "corn-kernels 1.5, broccoli-florets 1, green-peas 1, green-beans 0.8, beets 0.8 6, " +
    "baby-potatoes 1, celery-sticks 0.5, radishes 0.5 14, zucchini-sticks 0.6, mushrooms 0.5 11, " +
    "cauliflower-florets 0.6, corn-on-the-cob 0.8, black-olives 0.5 15, roast-pumpkin 0.6, " +
    "jicama-sticks 0.4 33, baby-corn 0.5, asparagus 0.5, seaweed-snacks 0.6 7, kohlrabi 0.4 38",
  fruit:
    "apple-slices 3, pear 2, clementine 2, blueberries 1.5, grapes 1.5, kiwifruit 1.2 5, " +
    "strawberries 2, raspberries 1, melon-balls 1, banana 1, pineapple 1, plum 0.8, peach 0.8, " +
    "orange-slices 0.8, mango 0.8, watermelon 0.8, blackberries 0.8, apricot 0.6, " +
    "pomegranate-arils 0.5 19, star-fruit 0.3 26, dragon-fruit 0.3 41, persimmon 0.4 35, " +
    "mandarin-orange 1, fig 0.3 23",
  dairy:
    "cheddar-cheese 2, plain-yogurt 1.2, mozzarella-pearls 1, string-cheese 1.5, gouda 0.8, " +
    "fruit-yogurt 1, cream-cheese 0.8, feta 0.4 13, cottage-cheese 0.4 24, yogurt-tube 0.8, " +
    "swiss-cheese 0.5",
  dip: "house-bean-dip 3, tzatziki 1.2, guacamole 0.8, fresh-salsa 0.8, hummus 0.6, ranch-dip 0.7, jam 0.5",
  treat:
    "house-oat-bar 3, popcorn 1.5, applesauce-pouch 0.8, shortbread 0.7, gingersnaps 1, " +
    "pumpkin-muffin 0.8, raisins 1, fig-bar 0.7, house-honey-cake 0.8, dried-mango 0.7, " +
    "vanilla-wafers 0.5, graham-crackers 0.8, dried-apple-rings 0.8, rice-pudding 0.4 17",
};

/** Made in the house kitchen: a dip, a flatbread, fish cakes, an oat bar, a honey cake. */
export function houseFoods(reference: readonly Food[]): Food[] {
  return HOUSE.flatMap(({ from, ...own }) => {
    const base = reference.find(({ id }) => id === from);
    return base ? [Food.parse({ ...base, aliases: [], sliceable: true, ...own })] : [];
  });
}

const made = (name: string, minutes: number, appliance: string) => ({
  ...{ name, minutes, handsOn: true, appliance, earliest: "evening", holdMinutesMax: null },
});
const alone = (name: string, minutes: number, appliance: string) => ({
  ...{ name, minutes, handsOn: false, appliance, earliest: "evening", holdMinutesMax: null },
});

const HOUSE = [
  {
    ...{ from: "bean-dip", id: "house-bean-dip", name: "house bean dip", maybeAllergens: [] },
    ...{ traits: ["messy"], sliceable: false, isStaple: true, servingCents: 20 },
    prepSteps: [made("Blend beans, lemon and oil", 8, "blender")],
  },
  {
    ...{ from: "pita-bread", id: "house-flatbread", name: "house flatbread", maybeAllergens: [] },
    ...{ servingCents: 15, countUnit: "flatbread", unitWeights: { flatbread: 28 } },
    prepSteps: [
      made("Mix and knead", 10, "none"),
      alone("Let it rise", 60, "none"),
      made("Bake in a dry pan", 15, "hob"),
      { ...made("Warm in a dry pan", 3, "hob"), earliest: "morning", holdMinutesMax: 60 },
    ],
  },
  {
    ...{ from: "fish-sticks", id: "house-fish-cakes", name: "fish cakes", maybeAllergens: [] },
    ...{ traits: [], sliceable: false, holding: "cold", countUnit: "fish cake" },
    ...{ unitWeights: { "fish cake": 22 }, servingGrams: 66, servingCents: 110 },
    ...{ allergens: ["fish", "wheat", "egg"], motifs: ["sea", "fish", "harbour"] },
    prepSteps: [made("Shape", 12, "none"), alone("Bake", 20, "oven")],
  },
  {
    ...{ from: "granola-bar", id: "house-oat-bar", name: "house oat bar", maybeAllergens: [] },
    ...{ traits: ["sticky"], countUnit: "bar", unitWeights: { bar: 36 }, servingGrams: 36 },
    ...{ servingCents: 18, allergens: ["oats", "milk"], motifs: ["farm", "building", "road"] },
    prepSteps: [made("Stir and press flat", 10, "hob"), alone("Bake", 25, "oven")],
  },
  {
    ...{ from: "banana-bread", id: "house-honey-cake", name: "honey cake", family: "cake" },
    ...{ maybeAllergens: [], servingGrams: 35, servingCents: 30, countUnit: "slice" },
    ...{ unitWeights: { slice: 35 }, motifs: ["bees", "gold", "bakery"] },
    prepSteps: [made("Stir the batter", 12, "none"), alone("Bake", 40, "oven")],
  },
] as const;

/** What goes into them, as typed on their pages; invented. */
export const HOUSE_RECIPES: Readonly<Record<string, string>> = {
  "house-bean-dip":
    "Makes 12 servings\n480 g cooked white beans\n1 lemon, the juice\n3 tbsp olive oil\n1/2 tsp salt",
  "house-flatbread":
    "Makes 16 flatbreads\n300 g wheat flour\n190 g warm water\n1 tsp dry yeast\n1 tbsp olive oil\n1/2 tsp salt",
  "house-fish-cakes":
    "Makes 28 fish cakes\n300 g cooked white fish\n250 g boiled potatoes\n1 egg\n40 g wheat breadcrumbs\n1 tbsp chopped parsley",
  "house-oat-bar":
    "Makes 12 bars\n200 g rolled oats\n90 g butter\n100 g honey\n60 g raisins\n1 pinch salt",
  "house-honey-cake":
    "Makes 16 slices\n200 g wheat flour\n120 g honey\n100 g butter\n2 eggs\n100 ml milk\n1 tsp baking powder",
};

/** The shelf, with the foods that the catalogue and the house kitchen have. */
export function favouritesOf(foods: readonly Food[]): Favourite[] {
  const byId = new Map<string, Food>(foods.map((food) => [food.id, food]));
  return Object.entries(SHELF).flatMap(([part, shelf]) =>
    shelf.split(", ").flatMap((entry) => {
      const [id = "", love = "1", debut = "0"] = entry.split(" ");
      const food = byId.get(id);
      if (!food || breaksSchoolRules(food)) return [];
      return [{ food, part: part as Part, love: Number(love), debut: Number(debut) }];
    }),
  );
}

/** Whether a food may not come to the school at all, traces of nuts included. */
function breaksSchoolRules(food: Food): boolean {
  return (
    food.traits.some((trait) => trait === "nuts" || trait === "in-glass" || trait === "fizzy") ||
    [...food.allergens, ...food.maybeAllergens].some(
      (allergen) => allergen === "tree-nut" || allergen === "peanut",
    )
  );
}

/** Whether a food is never for Pepper. */
export function hasSesame(food: Food): boolean {
  return food.allergens.includes("sesame");
}
