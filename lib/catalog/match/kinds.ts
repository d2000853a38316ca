/**
 * What some foods are by their nature, so that "Cheese, cheddar" and "cheddar" meet, and a class word
 * in front ("Nuts, almonds") neither helps nor hurts. Common knowledge, no source.
 */
const KINDS: Record<string, string> = {
  cheese: `cheddar mozzarella ricotta feta brie gouda provolone parmesan swiss colby monterey bocconcini
    emmental edam chevre romano american queso cottage jack`,
  nut: `mixednut almond walnut pecan cashew pistachio hazelnut macadamia peanut pignoli pinenut coconut pine`,
  seed: `sesame chia tahini`,
  squash: `zucchini butternut acorn hubbard pumpkin`,
  summer: `zucchini`,
  winter: `butternut acorn hubbard`,
  fish: `salmon tuna sardine`,
  melon: `cantaloupe honeydew watermelon muskmelon`,
  cookie: `brownie shortbread wafer gingersnap graham bar animal`,
  cracker: `graham saltine matzo crispbread animal cake`,
  candy: `gumdrop gummy marshmallow chocolate lollipop licorice jellybean fruitsnack gummi jelly`,
  snack: `snackmix trailmix pretzel popcorn chip trail puff jerky curl leather cake mix bar`,
  cereal: `granola muesli oatmeal oat flake`,
  sauce: `salsa ketchup mayonnaise mustard pesto marinara tomato`,
  dressing: `mayonnaise ranch caesar vinaigrette`,
  bread: `naan pita focaccia flatbread roti baguette bagel cornbread breadstick`,
  roll: `bun bagel baguette croissant`,
  pork: `ham bacon sausage prosciutto bologna salami`,
  beef: `meatball pastrami jerky bologna steak`,
  meat: `ham salami bologna pastrami pepperoni prosciutto turkey`,
  bean: `bakedbean edamame lentil chickpea garbanzo`,
  soy: `tofu tempeh edamame`,
  drink: `lemonade juice water tea smoothie`,
  water: `seltzer`,
  pasta: `spaghetti macaroni penne rotini farfalle ravioli tortellini`,
  berry: `strawberry blueberry raspberry blackberry`,
  citrus: `orange grapefruit clementine mandarin`,
  cake: `cupcake`,
  sausage: `frank wiener pepperoni salami bologna`,
  syrup: `maple`,
  pudding: `custard`,
  vegetable: `mixedvegetable`,
  fruit: `fruitsalad fruitcocktail`,
  grain: `rice oat barley quinoa bulgur couscous`,
};

/** Foods made of another, which answer to its name less than to their own. */
const MADE_OF: Record<string, string> = {
  apple: `applesauce`,
  cabbage: `sauerkraut slaw coleslaw`,
  grape: `raisin`,
  plum: `prune`,
  carrot: `mixedvegetable`,
  pea: `mixedvegetable`,
  corn: `mixedvegetable`,
  cucumber: `pickle`,
  mandarin: `tangerine clementine`,
  tomato: `ketchup marinara`,
  crab: `surimi`,
  rice: `sushi`,
  egg: `omelette omelet`,
  seaweed: `nori kelp laver`,
};

const kindsByWord = new Map<string, string[]>();
for (const [kind, members] of [...Object.entries(KINDS), ...Object.entries(MADE_OF)]) {
  for (const member of members.split(/\s+/)) {
    kindsByWord.set(member, [...(kindsByWord.get(member) ?? []), kind]);
  }
}

/** The classes a food's word belongs to: "cheddar" is a "cheese". */
export function kindsOf(word: string): readonly string[] {
  return kindsByWord.get(word) ?? [];
}

/** True for a word that names a class of foods: "cheese", "soup". */
export function isKind(word: string): boolean {
  return Object.hasOwn(KINDS, word);
}

/** Every word of the table. */
export function kindWords(): string[] {
  return [...kindsByWord.keys(), ...Object.keys(KINDS)];
}
