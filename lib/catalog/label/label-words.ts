import type { Allergen } from "../vocabulary.ts";

/**
 * What a word on a label says: these allergens for certain, these in some makes. A phrase that is listed
 * with nothing ("cocoa butter") only keeps its words from being read one by one.
 */
type Entry = readonly [
  phrases: string,
  holds: readonly Allergen[],
  someMakes?: readonly Allergen[],
];

/** Binders and spreads that bakers and makers use or leave out. */
const BAKED: readonly Allergen[] = ["milk", "egg", "soy", "sesame"];
const SWEET: readonly Allergen[] = ["milk", "egg", "soy", "tree-nut", "peanut"];
const CHOCOLATE: readonly Allergen[] = ["milk", "soy", "tree-nut", "peanut", "wheat"];

/**
 * Words that name an allergen of the US nine (FALCPA 2004, FASTER Act 2021, with the twelve tree nuts of
 * FDA's Q&A Guidance, Edition 5, 2025) or of Reg. (EU) 1169/2011 Annex II. Which words mean which is from
 * memory; what a dish is usually made of is common practice, no source. In the singular; a bar parts
 * phrases.
 */
const ENTRIES: readonly Entry[] = [
  ["milk|cream|butter|buttermilk|cheese|yogurt|yoghurt|kefir|lassi|labneh|skyr|quark", ["milk"]],
  ["whey|casein|caseinate|lactose|lactalbumin|curd|ghee|paneer|dulce de leche|milkshake", ["milk"]],
  ["cheddar|mozzarella|parmesan|feta|ricotta|brie|gouda|provolone|mascarpone", ["milk"]],
  [
    "halloumi|gruyere|camembert|asiago|queso|havarti|edam|manchego|emmental|burrata|pizza cheese",
    ["milk"],
  ],
  ["romano cheese|pecorino|monterey jack|colby|half and half|creme fraiche|dairy", ["milk"]],
  ["ice cream|gelato|sherbet|latte|tzatziki|raita|alfredo|au gratin|caramel|toffee", ["milk"]],
  ["fudge|butterscotch|white chocolate|cheesecake|milk chocolate", ["milk"], CHOCOLATE],
  ["pudding|smoothie|hot cocoa|creamer|whipped topping|nacho|mashed potato", [], ["milk", "egg"]],
  ["margarine", [], ["milk", "soy"]],
  ["shortening|vegetable oil spread|soybean oil|soya oil|soy lecithin|lecithin", [], ["soy"]],
  ["chocolate|cocoa|cacao", [], CHOCOLATE],
  ["coconut milk|coconut cream|coconut yogurt|coconut butter|coconut", ["coconut"]],
  [
    "almond milk|cashew milk|hazelnut milk|almond butter|cashew butter|hazelnut butter",
    ["tree-nut"],
  ],
  ["almond flour|almond yogurt|ground almond|walnut butter|pistachio butter", ["tree-nut"]],
  ["oat milk|oat drink|oat cream|oat flour|oat yogurt", ["oats"], ["wheat"]],
  [
    "soy milk|soya milk|soymilk|soy nut butter|soy yogurt|soy cheese|soy butter|soy flour|soy nut|soy protein",
    ["soy"],
  ],
  [
    "rice milk|hemp milk|pea milk|cocoa butter|shea butter|apple butter|fruit butter|pumpkin butter",
    [],
  ],
  ["sunflower butter|sunflower seed butter|seed butter|butter bean|butter lettuce", []],
  ["cream of tartar|cream soda|butterhead lettuce|butter pickle|bread and butter pickle", []],
  ["peanut butter|peanut flour|peanut oil|peanut|groundnut|monkey nut", ["peanut"]],
  ["satay|mole sauce", [], ["peanut", "soy", "tree-nut"]],

  ["egg|albumen|albumin|ovalbumin|egg white|egg yolk|omelette|omelet|frittata", ["egg"]],
  ["meringue|hollandaise|aioli|ovomucoid|lysozyme", ["egg"]],
  ["mayonnaise|mayo|tartar sauce|tartare sauce", ["egg"], ["soy", "mustard", "milk"]],
  [
    "coleslaw|egg salad|potato salad|chicken salad|ham salad|turkey salad",
    ["egg"],
    ["soy", "mustard"],
  ],
  ["tuna salad|salmon salad", ["egg", "fish"], ["soy", "mustard", "celery"]],
  ["shrimp salad|crab salad|lobster salad|prawn salad", ["egg", "crustacean"], ["soy", "celery"]],
  ["pasta salad|macaroni salad", ["egg", "wheat"], ["soy", "mustard", "celery"]],
  ["eggnog|custard", ["egg", "milk"]],
  ["quiche|crepe|souffle|popover|yorkshire pudding|french toast", ["egg", "milk", "wheat"]],
  ["ranch|ranch dressing", ["milk", "egg"], ["soy", "mustard"]],
  ["caesar|caesar salad|caesar dressing", ["milk", "egg", "fish"], ["mustard", "wheat", "soy"]],
  ["salad dressing|dressing|vinaigrette", [], ["milk", "egg", "soy", "mustard"]],

  ["fish|salmon|tuna|cod|haddock|pollock|halibut|trout|sardine|anchovy|mackerel", ["fish"]],
  ["herring|tilapia|catfish|snapper|flounder|plaice|perch|pike|carp|swordfish|whiting", ["fish"]],
  ["sea bass|bass|mahi mahi|hake|monkfish|eel|caviar|roe|lox|kipper|fish sauce|bonito", ["fish"]],
  ["fish stick|fish finger|fish cake|fishcake", ["fish", "wheat"], ["egg", "milk", "soy"]],
  ["worcestershire|worcestershire sauce", ["fish"], ["soy", "wheat"]],
  ["surimi|imitation crab|crab stick", ["fish"], ["crustacean", "egg", "wheat", "soy"]],
  ["sushi rice", []],
  ["sushi", ["fish"], ["soy", "wheat", "crustacean", "egg", "sesame"]],
  ["shrimp|prawn|crab|lobster|crayfish|crawfish|langoustine|krill|scampi", ["crustacean"]],
  ["crustacean|crabmeat|shellfish", ["crustacean"], ["mollusc"]],
  ["crab cake", ["crustacean", "wheat", "egg"], ["milk", "mustard"]],
  ["crab apple|crabapple", []],
  ["clam|oyster|mussel|scallop|squid|calamari|octopus|snail|escargot|cockle", ["mollusc"]],
  ["abalone|whelk|cuttlefish|conch|mollusc|mollusk|oyster sauce", ["mollusc"]],
  ["oyster mushroom", []],
  ["seafood", [], ["fish", "crustacean", "mollusc"]],

  ["almond|walnut|cashew|pecan|hazelnut|filbert|macadamia|pistachio|brazil nut", ["tree-nut"]],
  ["brazilnut|pine nut|pignoli|heartnut|butternut kernel|tree nut", ["tree-nut"]],
  [
    "marzipan|praline|gianduja|frangipane|amaretti|nougat|nut butter|trail mix",
    ["tree-nut"],
    ["peanut"],
  ],
  ["nut|mixed nut", ["tree-nut"], ["peanut"]],
  ["baklava", ["tree-nut", "wheat"], ["milk"]],
  ["pesto", ["milk", "tree-nut"]],
  ["chestnut|water chestnut|tiger nut|nutmeg|butternut|butternut squash", []],

  ["soy|soya|soybean|tofu|tempeh|edamame|miso|natto|tvp|bean curd", ["soy"]],
  ["soy sauce|shoyu|teriyaki|teriyaki sauce|hoisin|hoisin sauce", ["soy", "wheat"], ["sesame"]],
  ["tamari", ["soy"], ["wheat"]],
  ["textured vegetable protein|hydrolyzed vegetable protein", [], ["soy", "wheat"]],
  ["sesame|tahini|tahina|hummus|halvah|halva|gomasio|za atar|zaatar|baba ganoush", ["sesame"]],

  ["wheat|semolina|durum|spelt|triticale|farro|kamut|einkorn|emmer|gluten|seitan", ["wheat"]],
  [
    "bulgur|tabbouleh|couscous|wheat flour|farina|freekeh|graham|bran flake|wheat germ|matzo",
    ["wheat"],
  ],
  ["flour", ["wheat"]],
  [
    "bread|roll|bun|bagel|pita|naan|tortilla|roti|chapati|focaccia|ciabatta|brioche",
    ["wheat"],
    BAKED,
  ],
  ["bread crumb|breadcrumb|breadstick|bread stick|crouton|panko|stuffing|toast", ["wheat"], BAKED],
  ["sandwich|burrito|wrap|hamburger|hot dog bun|english muffin|crumpet", ["wheat"], BAKED],
  [
    "pizza|quesadilla|macaroni cheese|macaroni and cheese|lasagna|lasagne",
    ["wheat", "milk"],
    ["egg", "soy"],
  ],
  ["ravioli|tortellini", ["wheat"], ["egg", "milk"]],
  [
    "pasta|macaroni|spaghetti|noodle|ramen|udon|penne|orzo|vermicelli|fettuccine",
    ["wheat"],
    ["egg"],
  ],
  ["egg noodle", ["wheat", "egg"]],
  ["egg roll|spring roll|wonton|dumpling|gyoza|samosa", ["wheat"], ["egg", "soy", "sesame"]],
  ["cracker|pretzel|biscuit|scone|croissant|pancake|waffle|muffin|pastry", ["wheat"], BAKED],
  ["cake|cookie|brownie|cupcake|pie|doughnut|donut|shortbread|wafer|cobbler", ["wheat"], SWEET],
  ["gingerbread|gingersnap|tart|strudel|danish|crisp bread|pie crust|batter", ["wheat"], SWEET],
  [
    "battered|breaded|chicken nugget|chicken tender|fried chicken|fig bar|licorice|liquorice",
    ["wheat"],
    ["egg", "milk", "soy"],
  ],
  [
    "sausage|hot dog|meatball|meatloaf|deli meat|bologna",
    [],
    ["wheat", "milk", "soy", "egg", "celery"],
  ],
  [
    "tart cherry|rice vermicelli|rice flour|rice noodle|rice cake|rice paper|rice cracker|rice pasta",
    [],
  ],
  ["corn flour|cornflour|corn tortilla|tortilla chip|corn bread stuffing mix", [], ["wheat"]],
  ["cornbread|corn bread|corn muffin", ["wheat"], BAKED],
  ["potato flour|tapioca flour|chickpea flour|gram flour|buckwheat flour|buckwheat", []],
  ["coconut flour", ["coconut"]],
  ["sweet roll|cinnamon roll", ["wheat"], SWEET],
  ["fruit roll|sushi roll|cabbage roll|lettuce wrap", []],
  ["soba", [], ["wheat"]],
  ["fried rice", [], ["egg", "soy", "wheat", "sesame"]],
  ["snack mix", [], ["wheat", "milk", "soy", "peanut", "tree-nut"]],
  ["dip", [], ["milk", "egg", "sesame", "soy"]],
  ["soup|bouillon|stock cube|broth|gravy", [], ["wheat", "celery", "milk", "soy"]],
  ["rye|rye bread|rye flour|rye crispbread", ["rye"], ["wheat"]],
  ["pumpernickel", ["rye", "wheat"]],
  ["barley|barley malt|malt|malted|beer|ale", ["barley"], ["wheat"]],
  ["oat|oatmeal|rolled oat|porridge", ["oats"], ["wheat"]],
  ["granola|muesli|flapjack", ["oats"], ["tree-nut", "peanut", "wheat", "milk", "soy"]],

  ["celery|celeriac", ["celery"]],
  ["mustard|dijon", ["mustard"]],
  ["curry powder|curry", [], ["mustard", "celery"]],
  ["sulphite|sulfite|metabisulfite|metabisulphite|sulphur dioxide|sulfur dioxide", ["sulphites"]],
  ["dried apricot|dried fruit|raisin|wine|wine vinegar|sultana", [], ["sulphites"]],
  ["lupin|lupine|lupini", ["lupin"]],
];

/** What the words of one phrase say. */
export type LabelEntry = {
  readonly words: readonly string[];
  readonly holds: readonly Allergen[];
  readonly someMakes: readonly Allergen[];
};

/** Every phrase by its first word, the longest first. */
export const LABEL_WORDS: ReadonlyMap<string, readonly LabelEntry[]> = byFirstWord();

function byFirstWord(): Map<string, LabelEntry[]> {
  const found = new Map<string, LabelEntry[]>();
  for (const [phrases, holds, someMakes = []] of ENTRIES) {
    for (const phrase of phrases.split("|")) {
      const words = phrase.split(" ");
      const first = words[0] ?? "";
      found.set(first, [...(found.get(first) ?? []), { words, holds, someMakes }]);
    }
  }
  for (const entries of found.values()) {
    entries.sort((one, other) => other.words.length - one.words.length);
  }
  return found;
}
