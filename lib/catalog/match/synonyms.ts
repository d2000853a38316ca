/**
 * Other names, as `said -> meant`. British against American names and USDA's own synonyms
 * (FNDDS "additional food descriptions"), kitchen shorthand from memory. Both sides are written in
 * the singular; several ways of saying are parted by "|".
 */
const SYNONYMS = `
  mangetout | mange tout | edible podded pea | pea edible podded | sugar snap | sugar pea | snow pea | snowpea -> snap pea
  groundnut | monkey nut | goober -> peanut
  frankfurter | wiener sausage | weiner | frankfurt | hotdog | vienna sausage -> hot dog
  porridge | rolled oat | cereal oat -> oatmeal
  garbanzo | garbanzo bean | bengal gram | chick pea | ceci bean -> chickpea
  filbert | cobnut | cob nut -> hazelnut
  lox | gravlax | smoked trout salmon | chinook smoked -> smoked salmon
  pak choi | pak choy | pok choy | pakchoi | bok choi -> bok choy
  haricot | haricot bean | navy bean | cannellini | butter-white bean -> white bean
  courgette -> zucchini
  aubergine | brinjal -> eggplant
  rocket | rucola | rocket leaf | arugola -> arugula
  beetroot -> beet
  capsicum | sweet pepper | pepper sweet | bell-pepper -> bell pepper
  swede | neep -> rutabaga
  spring onion | green onion -> scallion
  coriander leaf | fresh coriander -> cilantro
  crisp packet | potato crisp -> potato chip
  chip shop chip | french fry | french fried | fry potato -> potato fry
  sultana | currant dried -> raisin
  satsuma | tangerine -> mandarin orange
  prawn -> shrimp
  gammon -> ham
  rasher | bacon rasher | streaky bacon -> bacon
  wholemeal | wholewheat | whole-wheat | whole wheat | wholegrain | whole grain -> wholewheat
  yoghurt | yogourt | yoghourt | yaourt -> yogurt
  tinned -> canned
  maize | sweetcorn | sweet corn -> corn
  broad bean -> fava bean
  gherkin -> pickle
  jacket potato | baked potato | potato baked -> bakedpotato
  mince | minced beef | beef mince | hamburger meat | beef ground | ground beef patty -> ground beef
  fish finger | fish portion and stick | fish portion | fish-stick | fish stick -> fishstick
  french toast stick -> frenchtoaststick
  french toast -> frenchtoast
  crab stick | seafood stick | imitation seafood | imitation crabmeat -> imitation crab
  cheese string | cheese stick | string-cheese | cheesestring -> string cheese
  fizzy water | soda water | carbonated water | water carbonated | mineral water sparkling | carbonated beverage club soda -> sparkling water
  tap water | drinking water | municipal water | bottled water | water municipal -> water
  lolly | ice lolly | ice pop | popsicle -> icelolly
  oatcake -> oat cake
  pepita -> pumpkin seed
  pignolia | pine kernel | pinenut -> pine nut
  catsup | tomato ketchup -> ketchup
  hummous | houmous | hommus | humous | humus -> hummus
  guac -> guacamole
  mayo -> mayonnaise
  bbq | barbeque -> barbecue
  pb -> peanut butter
  pbj | pb j | pb and j | peanut butter and jelly -> peanut butter jelly sandwich
  oj -> orange juice
  aj -> apple juice
  mac n cheese | mac cheese | macaroni cheese | macaroni noodle cheese -> macaroni and cheese
  evoo -> olive oil
  cuke -> cucumber
  choc -> chocolate
  veg | veggie -> vegetable
  pitta | pita pocket -> pita
  naan bread | nan -> naan
  chapatti | chappatti | chapati -> roti
  tofu bean curd | soybean curd | soya bean curd | beancurd -> tofu
  soya | soybean milk -> soy
  soymilk -> soy milk
  soybean green | green soybean -> edamame
  sparkling mineral water -> sparkling water
  candy floss -> cotton candy
  ice tea | tea iced -> iced tea
  hot cocoa | cocoa hot | drinking chocolate -> hot chocolate
  muesli bar | cereal bar | oat bar -> granola bar
  sweet biscuit -> cookie
  digestive | digestive biscuit -> graham cracker
  water biscuit | cream cracker | soda cracker -> saltine cracker
  semi skimmed milk | semiskimmed milk -> milk
  skimmed | fat free | nonfat | non fat | skim -> nonfat
  full fat milk | full cream milk | milk full fat -> whole milk
  lactose free -> lactosefree
  dairy free | nondairy | non dairy -> dairyfree
  gluten free -> glutenfree
  peanut free -> peanutfree
  egg mayonnaise -> egg salad
  tuna mayonnaise -> tuna salad
  boiled egg | egg boiled | hard cooked egg | hardboiled egg | hard boiled egg | hard boiled whole egg | egg hard boiled | egg whole boiled | boiled whole egg | whole boiled egg | egg whole hard boiled -> hardboiled egg
  spring roll wrapper -> rice paper
  clingstone -> peach
  carambola | starfruit -> star fruit
  pitaya | pitahaya | dragonfruit -> dragon fruit
  kiwi fruit | kiwifruit | chinese gooseberry -> kiwi
  litchi | lichee -> lychee
  rockmelon | muskmelon -> cantaloupe
  pawpaw -> papaya
  alligator pear -> avocado
  cos lettuce | lettuce cos | cos -> romaine lettuce
  butterhead | bibb | boston lettuce | looseleaf -> lettuce
  broccoli flower cluster -> broccoli floret
  sprout brussel | brussel sprout | brussels sprout -> brusselssprout
  seed sprouted | mung bean seed sprouted -> sprout
  mung bean sprouted | bean sprouted mung -> bean sprout
  alfalfa seed sprouted | alfalfa sprouted -> alfalfa sprout
  sweet potato | sweetpotato | yam | kumara | potato sweet -> sweetpotato
  spud -> potato
  water chestnut | waterchestnut -> waterchestnut
  corn on cob | corn on the cob | cob corn | kernel on cob | corn cob -> corncob
  ice cream -> icecream
  frozen yogurt | yogurt frozen -> frozenyogurt
  corn dog -> corndog
  baking chocolate -> bakingchocolate
  hot pepper | chili pepper | chile pepper | hot chili | pepper jalapeno | pepper hot -> jalapeno
  banana pepper | pepper banana -> jalapeno
  ground pepper | black pepper | white pepper | pepper black | pepper white | cayenne pepper | pepper ground -> blackpepper
  pepper sauce | hot sauce | pepper hot sauce -> hotsauce
  sesame butter | sesame paste | sesame seed paste -> tahini
  fruit spread | fruit preserve | preserve -> jam
  apple puree | apple sauce -> applesauce
  fruit butter apple | apple fruit butter -> apple butter
  caramel coated popcorn | popcorn caramel coated | caramel popcorn -> caramel corn
  cheese flavor puff | puff twist cheese flavor | cheese flavor puff twist | cheese puff | puff cheese flavor -> cheese puff
  jellybean -> jelly bean
  corn based puff | cheese curl -> cheese puff
  spaghetti sauce | pasta sauce | sauce pasta -> marinara sauce
  tomato sauce pasta -> marinara sauce
  salad dressing -> dressing
  luncheon meat | lunch meat | cold cut -> deli
  coconut meat | desiccated coconut | dried coconut | coconut dried -> shredded coconut
  edam cheese -> gouda
  chicken goujon | chicken finger | chicken strip breaded -> chicken tender
  chicken roll -> deli chicken
  plant based -> meatless
  bread roll | soft roll -> dinner roll
  burger bun | hamburger roll | hamburger bun | burger roll -> hamburgerbun
  hot dog bun | hot dog roll | frankfurter bun -> hotdogbun
  english muffin | muffin english | breakfast muffin -> englishmuffin
  sour dough -> sourdough
  mixed grain | multi grain | seven grain -> multigrain
  flat bread -> flatbread
  corn flake | cornflake -> cornflake
  corn bread -> cornbread
  pop corn -> popcorn
  corn starch -> cornstarch
  corn meal -> cornmeal
  split pea -> splitpea
  black eyed pea | blackeye pea | black eye pea | blackeyed pea -> cowpea
  butter bean -> lima bean
  collard green | spring green -> collard
  mustard greens -> mustardgreens
  beet greens -> beetgreens
  turnip greens -> turnipgreens
  salad greens | mixed leaf | salad leaf | mesclun | bagged salad | green leaf spinach lettuce -> salad leaf mix
  iceberg | lettuce iceberg | iceberg lettuce | lettuce head -> iceberg lettuce
  heavy cream | whipping cream | whipped cream | half and half | light cream -> dairy-cream
  cream of -> cream-of
  peanut sauce -> satay
  cottage cheese | cheese cottage -> cottagecheese
  cream cheese | cheese cream -> creamcheese
  sour cream | cream sour | sour cultured cream -> sourcream
  goat cheese | goat s cheese | cheese goat -> goatcheese
  blue cheese | cheese blue | bleu cheese -> roquefort
  banana split -> bananasplit
  rice beverage -> rice milk
  chow mein noodle -> chowmein
  egg white -> eggwhite
  egg yolk -> eggyolk
  white egg -> eggwhite
  yolk egg -> eggyolk
  peanut butter cookie | cookie peanut butter -> peanutbutter-cookie
  corn nut -> cornnut
  garlic bread -> garlicbread
  oil roasted | oil popped -> roasted
  pan fried | stir fried | pan roasted -> roasted
  dry roasted -> roasted
  trail mix -> trailmix
  snack mix | party mix -> snackmix
  fruit salad -> fruitsalad
  fruit cocktail -> fruitcocktail
  mixed nut | nut mixed -> mixednut
  vegetable mixed | mixed vegetable -> mixedvegetable
  chocolate milk | milk chocolate fluid -> chocolatemilk
  corned beef -> cornedbeef
  vegetarian burger | vegan burger | meatless burger | veggie patty | vegetarian patty -> vegetable burger
  oil cured -> cured
  chocolate morsel -> chocolate chip
  peanut butter cup -> peanutbuttercup
  wheat bagel | bagel wheat -> wholewheat bagel
  wheat bread | bread wheat -> wholewheat bread
  wheat roll | roll wheat -> wholewheat roll
  wheat tortilla | tortilla wheat -> wholewheat tortilla
  whole wheat spaghetti | spaghetti whole wheat | whole wheat macaroni | macaroni whole wheat -> wholewheat pasta
  wholewheat spaghetti | wholewheat macaroni | whole grain spaghetti | spaghetti whole grain -> wholewheat pasta
  green snap bean | bean snap green | snap bean | bean snap -> green bean
  chinese cabbage | cabbage chinese | pe tsai | napa cabbage -> bok choy
  hot tea | tea hot | black tea | green tea | tea green | herb tea | herbal tea | tea herbal | tea brewed -> hottea
  baked bean | bean baked -> bakedbean
  beef jerky | jerky -> jerky
  roast beef -> roastbeef
  canadian bacon | canadian style bacon -> canadianbacon
  turkey bacon | bacon turkey -> turkeybacon
`;

/** One synonym: the words as said, and the words meant. */
export type Synonym = { readonly said: readonly string[]; readonly meant: readonly string[] };

const byFirstWord = new Map<string, Synonym[]>();
for (const line of SYNONYMS.trim().split("\n")) {
  const [said = "", meant = ""] = line.split("->");
  for (const way of said.split("|")) {
    const synonym = { said: way.trim().split(/\s+/), meant: meant.trim().split(/\s+/) };
    const first = synonym.said[0] ?? "";
    byFirstWord.set(first, [...(byFirstWord.get(first) ?? []), synonym]);
  }
}
for (const entries of byFirstWord.values()) {
  entries.sort((left, right) => right.said.length - left.said.length);
}

/** Synonyms that start with a word, the longest first. */
export function synonymsFrom(word: string): readonly Synonym[] {
  return byFirstWord.get(word) ?? [];
}

/** Every word that a synonym knows, so that none of them is taken for a misspelling. */
export function synonymWords(): Set<string> {
  const all = new Set<string>();
  for (const entries of byFirstWord.values()) {
    for (const entry of entries) for (const word of [...entry.said, ...entry.meant]) all.add(word);
  }
  return all;
}
