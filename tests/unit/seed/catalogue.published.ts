/**
 * Published figures that the reference catalogue is held against, typed from the sources named.
 * ERS: USDA Economic Research Service, Fruit and Vegetable Prices 2022: preparation yield and
 * cup equivalent (pounds × 453.59237, rounded by ERS's own table to 5 g).
 */
export const ERS_YIELDS: readonly (readonly [food: string, row: string, yieldFactor: number])[] = [
  ["apple", "Apples", 0.9],
  ["apple-slices", "Apples", 0.9],
  ["apricot", "Apricots", 0.93],
  ["avocado", "Avocados", 0.7408],
  ["banana", "Bananas", 0.64],
  ["blackberries", "Blackberries", 0.96],
  ["blueberries", "Blueberries", 0.95],
  ["cantaloupe", "Cantaloupe", 0.51],
  ["cherries", "Cherries", 0.92],
  ["clementine", "Clementines", 0.77],
  ["grapefruit", "Grapefruit", 0.49],
  ["grapes", "Grapes", 0.96],
  ["honeydew-melon", "Honeydew", 0.46],
  ["kiwifruit", "Kiwi", 0.76],
  ["mango", "Mangoes", 0.71],
  ["nectarine", "Nectarines", 0.91],
  ["orange", "Oranges", 0.68],
  ["papaya", "Papaya", 0.62],
  ["peach", "Peaches", 0.96],
  ["pear", "Pears", 0.9],
  ["pineapple", "Pineapple", 0.51],
  ["plum", "Plum", 0.94],
  ["pomegranate-arils", "Pomegranate", 0.56],
  ["raspberries", "Raspberries", 0.96],
  ["strawberries", "Strawberries", 0.94],
  ["watermelon", "Watermelon", 0.52],
  ["raisins", "Grapes (raisins)", 1],
  ["dried-figs", "Figs, dried", 0.96],
  ["applesauce", "Apples, applesauce", 1],
  ["asparagus", "Asparagus", 0.4938],
  ["broccoli-florets", "Broccoli florets", 1],
  ["steamed-broccoli", "Broccoli heads", 0.78],
  ["brussels-sprouts", "Brussels sprouts", 1.06],
  ["butternut-squash", "Butternut squash", 0.714],
  ["baby-carrots", "Carrots, baby", 1],
  ["carrot-sticks", "Carrots, raw whole", 0.89],
  ["shredded-carrots", "Carrots, raw whole", 0.89],
  ["cauliflower-florets", "Cauliflower florets", 0.9702],
  ["celery-sticks", "Celery sticks", 1],
  ["cherry-tomatoes", "Tomatoes, grape & cherry", 0.91],
  ["tomato", "Tomatoes, large round", 0.91],
  ["corn-kernels", "Corn, canned", 0.65],
  ["corn-on-the-cob", "Corn, fresh", 0.54],
  ["cucumber-slices", "Cucumbers with peel", 0.97],
  ["green-beans", "Green beans", 0.8466],
  ["green-peas", "Green peas, frozen", 0.8924],
  ["lettuce", "Lettuce, iceberg", 0.95],
  ["romaine-lettuce", "Lettuce, romaine, heads", 0.94],
  ["mushrooms", "Mushrooms, whole", 0.97],
  ["okra", "Okra", 0.7695],
  ["baby-potatoes", "Potatoes", 0.8113],
  ["radishes", "Radish", 0.9],
  ["red-pepper-strips", "Red peppers", 0.82],
  ["green-bell-pepper", "Green peppers", 0.82],
  ["baby-spinach", "Spinach, eaten raw", 1],
  ["roast-sweet-potato", "Sweet potatoes", 0.8818],
  ["black-beans", "Black beans, canned", 0.65],
  ["kidney-beans", "Kidney beans, canned", 0.65],
  ["pinto-beans", "Pinto beans, canned", 0.65],
];

/** ERS cup equivalents in pounds, for foods whose cup equivalent is one plain cup. */
export const ERS_CUPS: readonly (readonly [food: string, pounds: number])[] = [
  ["apple", 0.2425],
  ["banana", 0.3307],
  ["blueberries", 0.3197],
  ["cantaloupe", 0.3748],
  ["cherries", 0.3417],
  ["clementine", 0.463],
  ["grapes", 0.3307],
  ["kiwifruit", 0.3858],
  ["mango", 0.3638],
  ["orange", 0.4079],
  ["peach", 0.3417],
  ["pear", 0.3638],
  ["pineapple", 0.3638],
  ["strawberries", 0.3197],
  ["watermelon", 0.3307],
  ["applesauce", 0.5401],
  ["baby-carrots", 0.2756],
  ["carrot-sticks", 0.2756],
  ["cauliflower-florets", 0.2756],
  ["celery-sticks", 0.2646],
  ["cherry-tomatoes", 0.3748],
  ["corn-kernels", 0.3638],
  ["cucumber-slices", 0.2646],
  ["green-beans", 0.2756],
  ["mushrooms", 0.1543],
  ["red-pepper-strips", 0.2646],
  ["black-beans", 0.3858],
];

/**
 * ERS counts half a cup of dried fruit as one cup equivalent (7 CFR 210.10, "dried counts double"):
 * a cup of it weighs about twice the cup equivalent.
 */
export const ERS_DRIED_CUPS: readonly (readonly [food: string, pounds: number])[] = [
  ["raisins", 0.1653],
  ["dates", 0.1653],
  ["dried-figs", 0.1653],
  ["prunes", 0.1874],
  ["dried-apricots", 0.1433],
];

/** Servings of ¼ cup per pound as purchased, USDA Food Buying Guide, fresh fruit and vegetables. */
export const BUYING_GUIDE: readonly (readonly [food: string, quarterCupsPerPound: number])[] = [
  ["apple", 14.8],
  ["watermelon", 6.1],
];

type Life =
  | "pantryDays"
  | "pantryOpenedDays"
  | "fridgeDays"
  | "fridgeOpenedDays"
  | "cutDays"
  | "preparedDays"
  | "freezerDays";

/** USDA FSIS FoodKeeper v128: the shorter end of each range, in days (a month is 30). */
export const FOODKEEPER: readonly (readonly [
  food: string,
  life: Life,
  days: number,
  id: number,
])[] = [
  ["cheddar-cheese", "fridgeDays", 180, 3],
  ["cheddar-cheese", "fridgeOpenedDays", 21, 3],
  ["shredded-cheese", "fridgeDays", 30, 5],
  ["shredded-cheese", "freezerDays", 90, 5],
  ["american-cheese", "fridgeDays", 21, 6],
  ["string-cheese", "fridgeDays", 150, 544],
  ["cottage-cheese", "fridgeDays", 14, 9],
  ["cottage-cheese", "fridgeOpenedDays", 7, 9],
  ["cream-cheese", "fridgeDays", 14, 10],
  ["plain-yogurt", "fridgeDays", 7, 33],
  ["plain-yogurt", "freezerDays", 30, 33],
  ["hard-boiled-egg", "preparedDays", 7, 23],
  ["hot-dog", "fridgeDays", 14, 98],
  ["hot-dog", "fridgeOpenedDays", 7, 98],
  ["deli-turkey", "fridgeDays", 14, 192],
  ["deli-turkey", "fridgeOpenedDays", 3, 192],
  ["rotisserie-chicken", "preparedDays", 3, 141],
  ["chicken-salad", "preparedDays", 3, 418],
  ["tuna-salad", "preparedDays", 3, 417],
  ["pasta", "preparedDays", 3, 177],
  ["pasta-salad", "preparedDays", 3, 420],
  ["vegetable-soup", "preparedDays", 3, 193],
  ["hummus", "fridgeDays", 90, 181],
  ["hummus", "fridgeOpenedDays", 7, 181],
  ["guacamole", "fridgeDays", 3, 180],
  ["fresh-salsa", "fridgeDays", 4, 572],
  ["tofu", "fridgeDays", 7, 168],
  ["apple", "fridgeDays", 28, 248],
  ["apple", "pantryDays", 21, 248],
  ["banana", "fridgeDays", 3, 251],
  ["blueberries", "fridgeDays", 7, 254],
  ["strawberries", "fridgeDays", 2, 481],
  ["clementine", "fridgeDays", 10, 256],
  ["grapes", "fridgeDays", 7, 261],
  ["kiwifruit", "fridgeDays", 3, 263],
  ["cantaloupe", "fridgeDays", 5, 496],
  ["cantaloupe", "cutDays", 2, 264],
  ["pineapple", "fridgeDays", 5, 267],
  ["snap-peas", "fridgeDays", 3, 273],
  ["broccoli-florets", "fridgeDays", 3, 276],
  ["carrot-sticks", "fridgeDays", 14, 279],
  ["baby-carrots", "fridgeDays", 28, 491],
  ["celery-sticks", "fridgeDays", 7, 281],
  ["cucumber-slices", "fridgeDays", 4, 283],
  ["romaine-lettuce", "fridgeDays", 7, 290],
  ["mixed-salad-greens", "fridgeOpenedDays", 2, 415],
  ["red-pepper-strips", "fridgeDays", 4, 296],
  ["cherry-tomatoes", "fridgeDays", 5, 600],
  ["white-bread", "pantryDays", 14, 195],
  ["bagel", "pantryDays", 1, 449],
  ["corn-tortilla", "pantryDays", 25, 553],
  ["saltine-crackers", "pantryOpenedDays", 30, 377],
  ["peanut-butter", "pantryDays", 180, 387],
  ["peanut-butter", "pantryOpenedDays", 60, 387],
  ["mayonnaise", "fridgeOpenedDays", 60, 350],
  ["applesauce", "fridgeOpenedDays", 7, 370],
  ["raisins", "pantryOpenedDays", 30, 379],
];

/** Where two FoodKeeper entries disagree the shorter is kept: cooked rice 4–6, leftovers 3–4 days. */
export const SHORTER_OF_TWO: readonly (readonly [food: string, days: number])[] = [
  ["white-rice", 3],
  ["brown-rice", 3],
  ["quinoa", 3],
];

/** USDA SNAP-Ed Seasonal Produce Guide, "What's in season?", as two copies of it agree. */
export const IN_SEASON: Readonly<Record<string, readonly string[]>> = {
  spring: ["apricot", "asparagus", "broccoli-florets", "cabbage", "lettuce", "mushrooms"].concat([
    "green-peas",
    "pineapple",
    "radishes",
    "baby-spinach",
    "strawberries",
  ]),
  summer: ["apricot", "beets", "red-pepper-strips", "blackberries", "blueberries"].concat([
    "cantaloupe",
    "cherries",
    "corn-on-the-cob",
    "cucumber-slices",
    "eggplant",
    "green-beans",
    "honeydew-melon",
    "mango",
    "okra",
    "peach",
    "plum",
    "raspberries",
    "strawberries",
    "tomato",
    "watermelon",
    "zucchini-sticks",
  ]),
  fall: ["beets", "broccoli-florets", "brussels-sprouts", "cauliflower-florets", "grapes"].concat([
    "green-beans",
    "kale",
    "mango",
    "parsnips",
    "pear",
    "roast-pumpkin",
    "roast-sweet-potato",
  ]),
  winter: ["beets", "brussels-sprouts", "cabbage", "grapefruit", "kale", "orange"].concat([
    "parsnips",
    "pear",
    "pineapple",
    "roast-pumpkin",
    "roast-sweet-potato",
    "turnip",
  ]),
};

/** A much-copied article prints the four lists one season late: these catch it. */
export const OUT_OF_SEASON: Readonly<Record<string, readonly string[]>> = {
  spring: ["grapefruit", "watermelon", "grapes", "roast-pumpkin"],
  summer: ["asparagus", "grapefruit", "grapes", "baby-spinach"],
  fall: ["strawberries", "asparagus", "watermelon", "grapefruit"],
  winter: ["strawberries", "asparagus", "grapes", "corn-on-the-cob", "peach"],
};

/** Seasons as calendar months: our conversion, the meteorological seasons of the north. */
export const SEASON_MONTHS: Readonly<Record<string, readonly number[]>> = {
  spring: [3, 4, 5],
  summer: [6, 7, 8],
  fall: [9, 10, 11],
  winter: [12, 1, 2],
};
