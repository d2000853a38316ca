/** A published row: the food as the catalogue has it, an age it speaks of, and what it asks for. */
export type ChokingRow = {
  readonly food: string;
  readonly underYears: 4 | 5;
  readonly level: "stop" | "look";
  readonly asks: RegExp;
  readonly source: string;
};

const CACFP = "USDA CACFP guide, Reducing the Risk of Choking in Young Children";
const MYPLATE = "USDA MyPlate, preschoolers";
const BLOCKS = "USDA FNS-305";

export const CHOKING_ROWS: readonly ChokingRow[] = [
  {
    food: "grapes",
    underYears: 5,
    level: "look",
    asks: /quarters, lengthwise/,
    source: "CDC, AAP, Illinois Extension",
  },
  {
    food: "cherry-tomatoes",
    underYears: 5,
    level: "look",
    asks: /quarters, lengthwise/,
    source: "same",
  },
  {
    food: "hot-dog",
    underYears: 4,
    level: "look",
    asks: /Quarter lengthwise.*never coins/,
    source: `${CACFP}; ${BLOCKS}`,
  },
  { food: "sausage-link", underYears: 4, level: "look", asks: /Quarter lengthwise/, source: CACFP },
  {
    food: "baby-carrots",
    underYears: 4,
    level: "look",
    asks: /Cook.*grate.*matchsticks/,
    source: MYPLATE,
  },
  {
    food: "celery-sticks",
    underYears: 4,
    level: "look",
    asks: /Cook.*grate.*matchsticks/,
    source: MYPLATE,
  },
  {
    food: "apple",
    underYears: 4,
    level: "look",
    asks: /Chop finely.*strips.*grate/,
    source: CACFP,
  },
  {
    food: "string-cheese",
    underYears: 4,
    level: "look",
    asks: /Chop finely.*thin strips/,
    source: CACFP,
  },
  {
    food: "cheddar-cheese",
    underYears: 4,
    level: "look",
    asks: /Chop finely.*thin strips/,
    source: CACFP,
  },
  {
    food: "chicken-breast",
    underYears: 4,
    level: "look",
    asks: /½ inch.*across the grain/,
    source: `${CACFP}; Institute of Child Nutrition 2022`,
  },
  { food: "almonds", underYears: 4, level: "stop", asks: /whole.*grind finely/, source: CACFP },
  { food: "sunflower-seeds", underYears: 4, level: "stop", asks: /whole/, source: CACFP },
  {
    food: "peanut-butter",
    underYears: 4,
    level: "look",
    asks: /thinly.*never by the spoon/,
    source: `${CACFP}; ${BLOCKS}`,
  },
  { food: "popcorn", underYears: 5, level: "stop", asks: /Do not serve/, source: CACFP },
  { food: "raisins", underYears: 4, level: "stop", asks: /Cook into other food/, source: CACFP },
  {
    food: "pretzels",
    underYears: 5,
    level: "stop",
    asks: /Do not serve/,
    source: `${BLOCKS}; ${MYPLATE}`,
  },
  {
    food: "marshmallows",
    underYears: 5,
    level: "stop",
    asks: /Do not serve/,
    source: `${BLOCKS}; ${MYPLATE}`,
  },
  {
    food: "lollipop",
    underYears: 5,
    level: "stop",
    asks: /Do not serve/,
    source: `${BLOCKS}; CDC`,
  },
  {
    food: "chicken-drumstick",
    underYears: 4,
    level: "look",
    asks: /bone out/,
    source: "Massachusetts DESE, 22 December 2022",
  },
];

/** Massachusetts DESE, 22 December 2022: taken off the restricted list. */
export const ALLOWED_AGAIN = "kiwifruit";
