/**
 * USDA Food Buying Guide for Child Nutrition Programs, yield tables: servings per purchase unit and
 * purchase units for 100 servings, as printed.
 */
export const UNITS_PER_100: readonly (readonly [food: string, servings: number, units: number])[] =
  [
    ["apples, 125-138 count, ½ cup", 7.4, 13.6],
    ["apples, cored and peeled, ¼ cup", 11.4, 8.8],
    ["watermelon, ¼ cup diced", 6.1, 16.4],
    ["cucumber, unpared, sliced, ¼ cup", 12.4, 8.1],
    ["cherry tomatoes, ¼ cup", 12.1, 8.3],
    ["tomatoes, diced, ¼ cup", 7.6, 13.2],
    ["corn cob, frozen, ½ cup", 2.44, 41.0],
    ["black beans, canned, ¼ cup", 5.91, 17.0],
    ["black beans, dry, ¼ cup cooked", 18.3, 5.5],
    ["ground beef, 1 oz cooked", 11.8, 8.5],
    ["a food of 10.4 servings", 10.4, 9.7],
    ["a food of 3.0 servings", 3, 33.4],
  ];

/** USDA Food Buying Guide, Appendix B: 2 lb of watermelon ready to eat, yield 0.61. */
export const WATERMELON = { ediblePounds: 2, yieldFactor: 0.61, pounds: 3.28, buyPounds: 3.5 };

/** A state agency's worksheet on the Food Buying Guide: 75 half cups of corn on the cob. */
export const CORN_COBS = { servings: 75, servingsPerPound: 2.44, pounds: 30.74, byColumn: 30.75 };

/** Food Buying Guide training: 230 servings of 2 oz cooked ground beef, 8.5 lb for 100 of 1 oz. */
export const GROUND_BEEF = { servings: 230, ounces: 2, servingsPerPound: 11.8, pounds: 39.1 };

/** USDA ERS, Fruit and Vegetable Prices, 2022: yield, pounds of a cup equivalent; rows as filed. */
export const ERS_ROWS = [
  { food: "apples", yieldFactor: 0.9, cupPounds: 0.2425, gramsPerQuarterCup: 30.6 },
  { food: "bananas", yieldFactor: 0.64, cupPounds: 0.3307, gramsPerQuarterCup: 58.6 },
  { food: "honeydew", yieldFactor: 0.46, cupPounds: 0.3748, gramsPerQuarterCup: 92.4 },
  { food: "oranges", yieldFactor: 0.68, cupPounds: 0.4079, gramsPerQuarterCup: 68.0 },
  { food: "black beans, dry", yieldFactor: 2.4692, cupPounds: 0.3858, gramsPerQuarterCup: 17.7 },
];
