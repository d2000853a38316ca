import type { Allergen } from "#lib/catalog/index.ts";

/**
 * FDA, Q&A Guidance on food allergen labelling, Edition 5 (6 January 2025): the twelve tree nuts,
 * as far as the catalogue names them.
 */
export const FDA_TREE_NUTS: readonly string[] = [
  "almond",
  "cashew",
  "hazelnut",
  "filbert",
  "macadamia",
  "pecan",
  "pine nut",
  "pistachio",
  "walnut",
];

/** Taken off the tree-nut list by the same guidance. */
export const FDA_NO_TREE_NUTS: readonly string[] = ["coconut", "chestnut"];

/**
 * Words that name an allergen of the US nine (FALCPA 2004, FASTER Act 2021) or of Reg. (EU)
 * 1169/2011 Annex II in a food's own name: the food must carry the tag. Typed by hand from the two
 * lists and from what the words mean (common practice, no source).
 */
export const NAMED: readonly (readonly [tag: Allergen, words: readonly string[]])[] = [
  ["milk", ["cheese", "cheddar", "mozzarella", "ricotta", "feta", "brie", "yogurt", "kefir"]],
  ["milk", ["whole milk", "skim milk", "chocolate milk", "quiche", "pizza"]],
  ["egg", ["egg", "eggs", "mayonnaise", "mayo", "quiche"]],
  ["fish", ["tuna", "salmon", "sardines", "fish", "surimi", "crab sticks"]],
  ["crustacean", ["shrimp", "prawn", "prawns"]],
  ["peanut", ["peanut", "peanuts", "groundnuts"]],
  ["wheat", ["bread", "pita", "naan", "roti", "focaccia", "bagel", "croissant", "tortilla"]],
  ["wheat", ["pasta", "noodles", "couscous", "bulgur", "tabbouleh", "pancakes", "waffle"]],
  ["wheat", ["cracker", "crackers", "matzo", "pretzel", "pretzels", "muffin", "cookie", "bun"]],
  ["wheat", ["pizza", "burrito", "brownie", "cupcake", "scone", "shortbread", "croutons"]],
  ["rye", ["rye"]],
  ["barley", ["barley"]],
  ["oats", ["oat", "oats", "oatmeal", "granola", "muesli"]],
  ["soy", ["soy", "soya", "tofu", "tempeh", "edamame", "soybeans", "teriyaki"]],
  ["sesame", ["sesame", "tahini", "hummus"]],
  ["celery", ["celery"]],
  ["mustard", ["mustard"]],
  ["coconut", ["coconut"]],
];

/** Foods a word of `NAMED` sits in without meaning it, each with what it is instead. */
export const NOT_MEANT: readonly (readonly [food: string, tag: Allergen, why: string])[] = [
  ["eggplant-dip", "egg", "eggplant is a vegetable"],
  ["vegan-cheese", "milk", "made of plants; milk stays under check the label"],
  ["soy-yogurt", "milk", "made of soy"],
  ["gluten-free-bread", "wheat", "made without wheat flour"],
  ["gluten-free-pasta", "wheat", "made without wheat flour"],
  ["corn-tortilla", "wheat", "made of maize; wheat stays under check the label"],
  ["tortilla-chips", "wheat", "made of maize; wheat stays under check the label"],
  ["rice-noodles", "wheat", "made of rice"],
  ["rice-crackers", "wheat", "made of rice; wheat stays under check the label"],
  ["marinara-sauce", "wheat", "a sauce for pasta and pizza; wheat stays under check the label"],
  ["marinara-sauce", "milk", "a sauce for pasta and pizza; milk stays under check the label"],
  ["sweet-pickles", "wheat", "pickles to go with bread and butter"],
  ["mozzarella", "wheat", "a cheese for pizza"],
  ["crispbread", "wheat", "rye crispbread; wheat stays under check the label"],
];

/**
 * Dishes and foods of `../shared/catalogue/samples/allergen.csv` that the catalogue holds too: how
 * the sample's text begins, and the food. The others name foods the catalogue has not.
 */
export const SAMPLES: readonly (readonly [begins: string, food: string])[] = [
  ["eggs, mayonnaise, salt", "egg-salad"],
  ["Egg salad", "egg-salad"],
  ["Egg, deviled", "deviled-egg"],
  ["macaroni, celery, mayonnaise", "pasta-salad"],
  ["white rice, eggs, peas", "fried-rice"],
  ["eggplant, tahini", "eggplant-dip"],
  ["eggs, milk, margarine, salt", "scrambled-egg"],
  ["white bread, eggs, milk", "french-toast-sticks"],
  ["whole wheat flour, wheat flour, water, sesame", "breadsticks"],
  ["powdered sugar, sugar, wheat flour", "cupcake"],
  ["sugar, wheat flour, water, shortening, cocoa powder, walnuts", "brownie"],
  ["pistachio nuts", "pistachios"],
  ["Nuts, macadamia nuts, raw", "macadamia-nuts"],
  ["Nuts, walnuts, english", "walnuts"],
  ["Nuts, pistachio nuts, raw", "pistachios"],
  ["Soymilk", "soy-milk"],
  ["Cheese, ricotta", "ricotta"],
  ["Cream, sour, cultured", "sour-cream"],
  ["Fish, salmon, sockeye, canned", "canned-salmon"],
  ["Couscous, cooked", "couscous"],
  ["Bread, pita", "pita-bread"],
  ["Crackers, matzo", "matzo"],
  ["Nuts, coconut milk", "coconut-milk-drink"],
  ["Eggplant, raw", "eggplant"],
  ["Oats", "oatmeal"],
  ["Honey", "honey"],
  ["Oil, olive", "olive-oil"],
  ["Snacks, pretzels", "pretzels"],
];
