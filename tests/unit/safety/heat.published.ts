/** Newton's law, Stewart's turkey: 185 °F in a room of 75 °F, 150 °F after 30 min. */
export const TURKEY = {
  source: "Stewart, Calculus, exponential decay exercise; times computed at full precision",
  ...{ startF: 185, roomF: 75, readF: 150, readMinutes: 30 },
  perMinute: 0.012766,
  after: [{ minutes: 40, fahrenheit: 141, off: 0.5 }],
  // The page prints 88 because it rounded k to 0.013; 89.7 is computed.
  until: [{ fahrenheit: 110, minutes: 89.7, off: 0.05 }],
} as const;

/** The same exercise with 141 °F at 30 minutes. */
export const TURKEY_VARIANT = {
  ...{ startF: 185, roomF: 75, readF: 141, readMinutes: 30 },
  after: [{ minutes: 45, fahrenheit: 126.1, off: 0.05 }],
  until: [{ fahrenheit: 100, minutes: 87.0, off: 0.05 }],
} as const;

/** JIS S 2006, lunch type, direct-fill: least °C after 6 h; k and the times are computed from it. */
export const JARS = [
  { capacityMl: 250, leastC: 48 },
  {
    capacityMl: 350,
    leastC: 48,
    perHour: 0.164,
    to60From95: 3.83,
    to60From74: 1.81,
    after4hC: 47.9,
  },
  {
    capacityMl: 500,
    leastC: 54,
    perHour: 0.132,
    to60From95: 4.77,
    to60From74: 2.26,
    after4hC: 51.8,
  },
  { capacityMl: 750, leastC: 62 },
] as const;

/** °F lines as the documents print them, with their printed °C. */
export const LINES = [
  { fahrenheit: 40, celsius: 4.4, source: "USDA FSIS, bag lunches" },
  { fahrenheit: 140, celsius: 60, source: "USDA FSIS, bag lunches" },
  { fahrenheit: 90, celsius: 32.2, source: "USDA FSIS, bag lunches" },
  { fahrenheit: 41, celsius: 5, source: "Food Code 3-501.16(A)(2)" },
  { fahrenheit: 135, celsius: 57, source: "Food Code 3-501.16(A)(1)" },
  { fahrenheit: 70, celsius: 21, source: "Food Code 3-501.19(C)" },
  { fahrenheit: 165, celsius: 73.9, source: "USDA, 13 August 2019; FoodSafety.gov chart" },
] as const;

const EARLE = "Earle, Unit Operations in Food Processing, App. 7";
const ASHRAE = "ASHRAE Refrigeration ch. 9 Table 3";
const GEANKOPLIS = "Geankoplis, App. A.4-1";

/** kJ/(kg K) above freezing. Where two sources differ the lower is followed, as it warms and cools sooner. */
export const SPECIFIC_HEATS = [
  { food: "apple", kj: 3.6, source: EARLE },
  { food: "banana", kj: 3.35, source: EARLE },
  { food: "peach", kj: 3.78, source: EARLE },
  { food: "watermelon", kj: 4.06, source: EARLE },
  { food: "carrot-sticks", kj: 3.6, source: `${EARLE} (ASHRAE: 3.92)` },
  { food: "green-beans", kj: 3.81, source: EARLE },
  { food: "tomato", kj: 3.98, source: EARLE },
  { food: "corn-kernels", kj: 3.35, source: EARLE },
  { food: "green-peas", kj: 3.31, source: EARLE },
  { food: "steak-strips", kj: 3.22, source: EARLE },
  { food: "pulled-pork", kj: 2.85, source: EARLE },
  { food: "salmon", kj: 3.18, source: EARLE },
  { food: "hard-boiled-egg", kj: 3.2, source: EARLE },
  { food: "milk", kj: 3.9, source: EARLE },
  { food: "broccoli-florets", kj: 4.01, source: ASHRAE },
  { food: "celery-sticks", kj: 4.07, source: ASHRAE },
  { food: "cucumber-slices", kj: 4.09, source: ASHRAE },
  { food: "chicken-breast", kj: 3.31, source: GEANKOPLIS },
  { food: "swiss-cheese", kj: 2.68, source: GEANKOPLIS },
  { food: "butter", kj: 2.3, source: GEANKOPLIS },
  { food: "white-bread", kj: 2.72, source: `${GEANKOPLIS} (Earle: 2.93)` },
  { food: "sausage-link", kj: 3.6, source: GEANKOPLIS },
] as const;

/** Food Code 1-201.10(B): what needs time or temperature control, and what does not. */
export const TIME_SENSITIVE = [
  { food: "cheddar-cheese", is: true, because: "animal food" },
  { food: "deli-turkey", is: true, because: "animal food" },
  { food: "egg-salad", is: true, because: "animal food" },
  { food: "ranch-dip", is: true, because: "animal food" },
  { food: "white-rice", is: true, because: "cooked plant food" },
  { food: "steamed-broccoli", is: true, because: "cooked plant food" },
  { food: "pasta-salad", is: true, because: "cooked plant food" },
  { food: "bean-sprouts", is: true, because: "raw sprouts" },
  { food: "cantaloupe", is: true, because: "cut melon" },
  { food: "baby-spinach", is: true, because: "cut leafy greens" },
  { food: "fresh-salsa", is: true, because: "cut tomatoes" },
  { food: "cherry-tomatoes", is: false, because: "whole" },
  { food: "carrot-sticks", is: false, because: "cut produce that the code does not name" },
  { food: "white-bread", is: false, because: "needs neither" },
  { food: "peanut-butter", is: false, because: "needs neither" },
] as const;

/** 200 g of ice melting takes 66.8 kJ, which cools 1.0 kg of food (3.6 kJ/(kg K)) by 18.6 K (computed). */
export const ICE_BUDGET = { iceKg: 0.2, foodKjPerK: 3.6, meltsKj: 66.8, coolsK: 18.6 } as const;
