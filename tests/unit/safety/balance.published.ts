import type { Component } from "#lib/safety/index.ts";

const CSDE = "Connecticut SDE crediting page";
const EXHIBIT_A = "USDA Exhibit A";
const CDE = "California Dept. of Education, notes to the meal-pattern table";

/** One row: so many grams of a food count for so much at school. */
export type CreditRow = {
  readonly food: string;
  readonly grams: number;
  readonly component: Component;
  readonly amount: number;
  readonly source: string;
};

export const MEAT_ROWS: readonly CreditRow[] = [
  { food: "cheddar-cheese", grams: 28.35, component: "meat", amount: 1, source: `${CSDE}: 1 oz` },
  { food: "cottage-cheese", grams: 56.7, component: "meat", amount: 1, source: `${CSDE}: 2 oz` },
  { food: "ricotta", grams: 56.7, component: "meat", amount: 1, source: `${CSDE}: 2 oz` },
  {
    food: "hard-boiled-egg",
    grams: 50,
    component: "meat",
    amount: 2,
    source: `${CSDE}: a large egg is 2`,
  },
  {
    food: "hard-boiled-egg",
    grams: 25,
    component: "meat",
    amount: 1,
    source: `${CSDE}: half an egg`,
  },
  { food: "peanut-butter", grams: 32, component: "meat", amount: 1, source: `${CSDE}: 2 tbsp` },
  { food: "almonds", grams: 28.35, component: "meat", amount: 1, source: `${CSDE}: 1 oz` },
  { food: "plain-yogurt", grams: 113.4, component: "meat", amount: 1, source: `${CSDE}: 4 oz` },
  { food: "soy-yogurt", grams: 113.4, component: "meat", amount: 1, source: `${CSDE}: 4 oz` },
  { food: "tofu", grams: 62.4, component: "meat", amount: 1, source: `${CSDE}: 2.2 oz` },
  { food: "tempeh", grams: 28.35, component: "meat", amount: 1, source: `${CSDE}: 1 oz` },
  {
    food: "crab-sticks",
    grams: 85.05,
    component: "meat",
    amount: 1,
    source: `${CSDE}: 3 oz surimi`,
  },
  {
    food: "chicken-breast",
    grams: 28.35,
    component: "meat",
    amount: 1,
    source: "USDA Food Buying Guide: 1 oz cooked",
  },
];

export const GRAIN_ROWS: readonly CreditRow[] = [
  { food: "saltine-crackers", grams: 22, component: "grain", amount: 1, source: `${EXHIBIT_A}, A` },
  { food: "pretzels", grams: 22, component: "grain", amount: 1, source: `${EXHIBIT_A}, A` },
  {
    food: "croutons",
    grams: 6,
    component: "grain",
    amount: 0.25,
    source: `${EXHIBIT_A}, A: ¼ is 6 g`,
  },
  { food: "white-bread", grams: 28, component: "grain", amount: 1, source: `${EXHIBIT_A}, B` },
  {
    food: "pita-bread",
    grams: 21,
    component: "grain",
    amount: 0.75,
    source: `${EXHIBIT_A}, B: ¾ is 21 g`,
  },
  {
    food: "flour-tortilla",
    grams: 14,
    component: "grain",
    amount: 0.5,
    source: `${EXHIBIT_A}, B: ½ is 14 g`,
  },
  {
    food: "bagel",
    grams: 7,
    component: "grain",
    amount: 0.25,
    source: `${EXHIBIT_A}, B: ¼ is 7 g`,
  },
  { food: "graham-crackers", grams: 28, component: "grain", amount: 1, source: `${EXHIBIT_A}, B` },
  { food: "tortilla-chips", grams: 28, component: "grain", amount: 1, source: `${EXHIBIT_A}, B` },
  {
    food: "english-muffin",
    grams: 57,
    component: "grain",
    amount: 2,
    source: "Arizona DOE, April 2020: 57 g / 28 g = 2.03, down to 2.00",
  },
  { food: "pancakes", grams: 34, component: "grain", amount: 1, source: `${EXHIBIT_A}, C` },
  {
    food: "waffle",
    grams: 9,
    component: "grain",
    amount: 0.25,
    source: `${EXHIBIT_A}, C: ¼ is 9 g`,
  },
  { food: "croissant", grams: 34, component: "grain", amount: 1, source: `${EXHIBIT_A}, C` },
  { food: "cornbread", grams: 34, component: "grain", amount: 1, source: `${EXHIBIT_A}, C` },
  {
    food: "bran-muffin",
    grams: 55,
    component: "grain",
    amount: 1,
    source: `${EXHIBIT_A}, D; CSDE chart`,
  },
  { food: "granola-bar", grams: 55, component: "grain", amount: 1, source: `${EXHIBIT_A}, D` },
  {
    food: "white-rice",
    grams: 79,
    component: "grain",
    amount: 1,
    source: "California DSS: ½ c cooked",
  },
  { food: "pasta", grams: 70, component: "grain", amount: 1, source: "California DSS: ½ c cooked" },
  {
    food: "oatmeal",
    grams: 120,
    component: "grain",
    amount: 1,
    source: "California DSS: ½ c cooked",
  },
  {
    food: "corn-flakes-cereal",
    grams: 28,
    component: "grain",
    amount: 1,
    source: "California DSS: 28 g",
  },
];

export const PRODUCE_ROWS: readonly CreditRow[] = [
  {
    food: "apple-slices",
    grams: 55,
    component: "fruit",
    amount: 0.5,
    source: "ERS 2022: 110 g a cup",
  },
  { food: "grapes", grams: 75, component: "fruit", amount: 0.5, source: "ERS 2022: 150 g a cup" },
  {
    food: "raisins",
    grams: 40,
    component: "fruit",
    amount: 0.5,
    source: `${CDE}: ¼ c dried is ½ c`,
  },
  {
    food: "dried-apricots",
    grams: 40,
    component: "fruit",
    amount: 0.5,
    source: `${CDE}: ¼ c dried is ½ c`,
  },
  {
    food: "orange-juice",
    grams: 124,
    component: "fruit",
    amount: 0.5,
    source: `${CDE}: juice as its volume`,
  },
  {
    food: "baby-spinach",
    grams: 25,
    component: "vegetable",
    amount: 0.5,
    source: `${CDE}: 1 c raw leaves is ½ c`,
  },
  {
    food: "romaine-lettuce",
    grams: 35,
    component: "vegetable",
    amount: 0.5,
    source: `${CDE}: 1 c raw leaves is ½ c`,
  },
  {
    food: "baby-carrots",
    grams: 62.5,
    component: "vegetable",
    amount: 0.5,
    source: "ERS 2022: 125 g a cup",
  },
  {
    food: "celery-sticks",
    grams: 14.9,
    component: "vegetable",
    amount: 0,
    source: `${CDE}: ⅛ c is the least`,
  },
  {
    food: "celery-sticks",
    grams: 15,
    component: "vegetable",
    amount: 0.125,
    source: `${CDE}: ⅛ c is the least`,
  },
  { food: "milk", grams: 244, component: "milk", amount: 1, source: "1 cup" },
];

/** 7 CFR 210.10(c) as printed by the California Department of Education: day and week. */
export const PATTERN_ROWS = [
  {
    grade: "school-k5",
    fruit: [0.5, 2.5],
    vegetable: [0.75, 3.75],
    grain: [1, 8],
    meat: [1, 8],
    milk: [1, 5],
    subgroups: [0.5, 0.75, 0.5, 0.5, 0.5],
  },
  {
    grade: "school-6-8",
    fruit: [0.5, 2.5],
    vegetable: [0.75, 3.75],
    grain: [1, 8],
    meat: [1, 9],
    milk: [1, 5],
    subgroups: [0.5, 0.75, 0.5, 0.5, 0.5],
  },
  {
    grade: "school-9-12",
    fruit: [1, 5],
    vegetable: [1, 5],
    grain: [2, 10],
    meat: [2, 10],
    milk: [1, 5],
    subgroups: [0.5, 1.25, 0.5, 0.5, 0.75],
  },
] as const;

/** The trap between the schemes: the consumer's plate counts these as one ounce equivalent, school as two or half. */
export const PLATE_TRAPS = [
  { food: "hard-boiled-egg", grams: 50, plate: 1, school: 2, source: "USDA MyPlate: 1 egg" },
  { food: "peanut-butter", grams: 16, plate: 1, school: 0.5, source: "USDA MyPlate: 1 tbsp" },
  { food: "almonds", grams: 14, plate: 1, school: 0.5, source: "USDA MyPlate: ½ oz" },
] as const;
