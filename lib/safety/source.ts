/** How well a value is known: opened and read, worked out from such values, remembered, or custom. */
export type SourceMark = "read" | "computed" | "from memory" | "common practice";

/** Where a rule or a number comes from. */
export type Source = {
  readonly title: string;
  /** Paragraph, table or edition. */
  readonly where: string;
  readonly mark: SourceMark;
};

/** Every source that a check rests on; each constant names its own beside it. */
export const SOURCES = {
  "us-nine": {
    title: "FALCPA 2004 and FASTER Act 2021: the nine major allergens",
    where: "list as printed by the FDA",
    mark: "read",
  },
  "us-tree-nuts": {
    title: "FDA, Questions and Answers on food allergens, Edition 5",
    where: "6 January 2025: twelve tree nuts; coconut is no longer one",
    mark: "read",
  },
  "us-may-contain": {
    title: "FDA, food allergen pages: “may contain” is voluntary",
    where: "its absence proves nothing",
    mark: "read",
  },
  "eu-fourteen": {
    title: "Regulation (EU) 1169/2011",
    where: "Annex II: the fourteen",
    mark: "read",
  },
  "cross-contact": {
    title: "Own board, own knife, own box for what another may not touch",
    where: "kitchen custom",
    mark: "common practice",
  },
  "own-record": {
    title: "Your own record of the child",
    where: "Series bible, the children",
    mark: "common practice",
  },
  "own-school": {
    title: "The school’s rule as you wrote it down",
    where: "Series bible, the school",
    mark: "common practice",
  },
  "own-recall": {
    title: "Your own mark on the food or product",
    where: "Larder; the maker’s or the food office’s notice goes first",
    mark: "common practice",
  },
  "choking-cacfp": {
    title: "USDA, Reducing the Risk of Choking in Young Children (CACFP guide)",
    where: "foods and how to prepare them, under 4",
    mark: "read",
  },
  "choking-myplate": {
    title: "USDA MyPlate, preschoolers: choking hazards",
    where: "pieces no larger than ½ inch",
    mark: "read",
  },
  "choking-icn": {
    title: "Institute of Child Nutrition, December 2022",
    where: "pieces no larger than ½ inch (1.3 cm) under 4",
    mark: "read",
  },
  "choking-blocks": {
    title: "USDA FNS-305, Building Blocks, for child care",
    where: "foods not to serve, and sausages quartered lengthwise",
    mark: "read",
  },
  "choking-extension": {
    title: "University of Illinois Extension; CDC as reported; AAP",
    where: "round fruit in quarters, to the fifth birthday",
    mark: "read",
  },
  "choking-dese": {
    title: "Massachusetts DESE policy, 22 December 2022",
    where: "bones out; kiwifruit allowed again",
    mark: "read",
  },
  "choking-older": {
    title: "Sitting down and chewing, past the published ages",
    where: "to the sixth birthday",
    mark: "common practice",
  },
  "heat-fsis": {
    title: "USDA FSIS, Keeping Bag Lunches, consumer guidance",
    where: "40 to 140 °F (4.4 to 60 °C) for 2 hours at most; 1 hour above 90 °F (32.2 °C)",
    mark: "read",
  },
  "heat-usda-2019": {
    title: "USDA, 13 August 2019: packing lunches",
    where:
      "two cold sources in an insulated bag; hot food to 165 °F, the container filled with boiling water first",
    mark: "read",
  },
  "heat-food-code": {
    title: "FDA Food Code 3-501.16 and 3-501.19 (retail trade)",
    where: "5 and 57 °C (41 and 135 °F); 4 or 6 hours with a written mark",
    mark: "read",
  },
  "heat-tcs": {
    title: "FDA Food Code 1-201.10(B)",
    where: "foods that need time or temperature control",
    mark: "read",
  },
  "heat-cut-produce": {
    title: "CDC, Fruit and Vegetable Safety",
    where: "cut produce into the cold within 2 hours",
    mark: "from memory",
  },
  "heat-jis": {
    title: "JIS S 2006, lunch type, direct-fill",
    where: "least temperature after 6 hours, by size, from 95 °C in a room of 20 °C",
    mark: "read",
  },
  "heat-newton": {
    title: "Newton’s law of cooling, one well-mixed lump",
    where: "textbook; a thick food’s middle cools later, its rim sooner",
    mark: "read",
  },
  "heat-bag": {
    title: "Bag and box worked out from foam thickness and still air",
    where: "take one thermometer reading of yours instead",
    mark: "from memory",
  },
  "heat-ice": {
    title: "Latent heat of ice 334 kJ/kg; water 4.186, ice 2.05 kJ/(kg K)",
    where: "teaching pages",
    mark: "read",
  },
  "heat-foods": {
    title: "Specific heats: Earle, App. 7; ASHRAE Refrigeration ch. 9; Geankoplis App. A.4",
    where: "the lower of two values, which warms and cools sooner",
    mark: "read",
  },
  "balance-school": {
    title: "7 CFR 210.10, US school meal pattern",
    where: "meal-pattern table as printed by the California Department of Education",
    mark: "read",
  },
  "balance-crediting": {
    title: "Crediting: CDE table notes, Connecticut SDE, USDA Exhibit A",
    where:
      "dried counts double, raw leaves half, juice at most half, beans as one or the other, rounded down",
    mark: "read",
  },
  "balance-plate": {
    title: "USDA MyPlate, the five groups",
    where: "ounce equivalents of the consumer’s plate, not the school’s",
    mark: "read",
  },
  "balance-portions": {
    title: "WHO/FAO: 400 g of fruit and vegetables a day, as portions of 80 g",
    where: "30 g dried; juice and beans once each; potatoes not",
    mark: "from memory",
  },
} as const satisfies Record<string, Source>;
export type SourceId = keyof typeof SOURCES;

/** A source mark in words, as a page shows it. */
export function describeMark(mark: SourceMark): string {
  switch (mark) {
    case "read":
      return "read at the source";
    case "computed":
      return "worked out from read values";
    case "from memory":
      return "from memory, not opened";
    case "common practice":
      return "common practice, no source";
  }
}
