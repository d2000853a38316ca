/**
 * The roles words play in the name of a food. Drawn up from how USDA descriptions (FNDDS 2021-2023,
 * SR28) and recipe lines are worded; which word has which role is common practice, no source.
 */
function words(text: string): ReadonlySet<string> {
  return new Set(text.trim().split(/\s+/));
}

/** Say nothing about which food it is. */
export const SILENT = words(`
  a an the and or of in to for from as with at by on not no non per each nfs ns type variety varied all
  form kind style added solid drained undrained enriched unenriched fortified commercial
  commercially home homemade prepared recipe ready eat heat serve reheated unheated heated preheated
  pack packed regular specified mature immature separable lean trimmed  usda commodity
  approximately about average year round domestic wild farmed area species moist dry-heat restaurant
  takeout fast food finfish crustacean mollusk entree breakfast item product include including also
  approx optional taste plus more needed my our favourite favorite leftover some few any new best good
  calcium sodium vitamin ascorbic acid protein fiber calorie cholesterol diet loose bagged prewashed
  washed rinsed uncooked unprepared edible portion refrigerated chilled
  pure real genuine dessert low lower lowfat light lite reduced fat organic
`);

/** Little matters: preparation, cut, size, packing. They break ties and hardly cost when missing. */
export const LIGHT = words(`
  liquid fluid shelf stable raw fresh frozen cooked boiled steamed canned can tin plain natural whole peeled unpeeled pitted
  seedless seeded shelled unshelled hulled cored trimmed skin skinless boneless peel salted unsalted
  salt sweetened unsweetened toasted untoasted roasted roast grilled broiled baked braised
  stewed simmered microwaved microwave warm cold chopped sliced slice diced dice cubed cube shredded
  grated minced crumbled cut julienned halved half quartered quarter segment section wedge stick
  strip piece chunk round ring ribbon coin batons baton spear floret floweret cluster 
  ball kernel nibblet spiral matchstick finger freshly brewed stalk  baby mini miniature small
  medium large big extra tiny jumbo little bite size snack single thin thick thinly thickly finely
  roughly coarsely soft hard firm ripe unripe smooth crunchy chunky creamy creamed cultured
  aril container pot tray punnet sachet bowl cup mug pearl pearled pouch packet pack package box carton tub bottle bottled jar jarred bag tube individual
  serving  deli luncheon lunch hand head bunch   dehydrated sulfured unsulfured
  uncoated blanched unblanched popped air dry extruded part partially moisture milkfat
  imported local garden table
`);

/** Shades of one food: they decide between kin, and cost a little when missing. */
export const SHADES = words(`
  red green yellow white black brown orange purple pink golden dark  sweet sour hot mild
  spicy bitter mixed assorted winter summer english italian french chinese american european mexican
  nonfat skim lactosefree flavored flavoured flavor vanilla strawberry fruit ground  great
  northern sharp aged cured young old-fashioned dill tart dairyfree wholegrain
`);

/** Ways of keeping or cooking that make another food of it. */
export const STATES = words(`
  dried smoked pickled fried breaded battered candied mashed scalloped hashed pureed evaporated
  condensed powdered instant stuffed  glazed scrambled deviled carbonated refried
  marinated caramelized  coated curried fermented 
`);

/** What is in a state by nature, so that naming the state adds nothing to it. */
export const STATES_BY_NATURE: Readonly<Record<string, ReadonlySet<string>>> = {
  dried: words(`
  nut seed bean lentil pea chickpea prune raisin date almond walnut pecan cashew pistachio hazelnut
  peanut macadamia pignoli pine coconut sesame sunflower pumpkin pasta noodle seaweed nori jerky fruit
`),
  breaded: words("nugget tender fishstick"),
  fried: words("nugget tender fishstick chip puff bacon egg rice"),
  smoked: words("bacon ham frank dog salami sausage"),
  pickled: words("pickle kimchi sauerkraut olive"),
  fermented: words("kefir kimchi sauerkraut yogurt"),
  battered: words("nugget tender fishstick"),
  carbonated: words("sparkling seltzer"),
  stuffed: words("olive"),
};

/** Words that make another food wherever they stand: apple against apple juice. */
export const STRONG_MAKES = words(`
  pie tart cobbler crumble turnover strudel cake cheesecake shortcake  split pudding custard
  mousse souffle juice nectar cider punch ade soda cola wine beer vinegar sauce gravy glaze soup
  chowder bisque stew casserole curry chili stock broth bouillon consomme puree paste flour starch
  meal oil powder extract essence flavoring syrup fry hash tot cutlet fritter crisp
  dumpling pizza burger cheeseburger hamburger lasagna taco burrito enchilada quesadilla tamale
  liver giblet  tongue hock neck wing rib sparerib tripe gizzard foot tail bone
  rind zest stem yolk greens bud blossom peeling milkshake shake cocktail sherbet sorbet icing
  frosting filling topping curd chutney relish coating stuffing crumb crust dough mix marinade rub
  seasoning baking sundae float latte coffee bran germ
`);

/** Words that make another food when they are what the phrase is about: butter, in peanut butter. */
export const SOFT_MAKES = words(`
  butter milk cheese yogurt cream bread toast bun roll muffin cookie cracker biscuit chip candy
  chocolate bar jam jelly salad sandwich dip dressing spread wrap tortilla noodle pasta rice cereal
  seed sprout leaf drink tea water smoothie
  doughnut pastry danish fudge patty caramel honey mustard ketchup mayonnaise 
`);

/** Leafy foods: "spinach leaves" is spinach, "grape leaves" are not grapes. */
export const LEAFY = words(`
  lettuce spinach arugula kale romaine cabbage iceberg salad chard greens cress endive bok
`);

/** Foods a lunch catalogue may well lack: never taken for a misspelling of one it has. */
export const OTHER_FOODS = words(`
  onion garlic leek shallot scallion chive rhubarb gooseberry currant quince loquat kumquat lime lemon
  lemongrass plantain tomatillo tamarind taro yuca cassava rutabaga celeriac artichoke fennel endive
  radicchio chard collard  watercress cress sorrel dandelion beetgreens chicory escarole
  cilantro parsley basil mint thyme oregano rosemary sage  marjoram tarragon cumin cinnamon
  nutmeg clove allspice cardamom turmeric ginger paprika saffron anise  peppercorn jalapeno
  habanero chilli chile horseradish wasabi caper cornichon anchovy herring mackerel cod haddock halibut
  tilapia trout bass bream perch pollock catfish sole flounder snapper hake eel carp swordfish roe
  caviar crab lobster clam oyster mussel scallop squid octopus lamb mutton veal venison bison 
  rabbit duck goose quail pheasant liverwurst pate chorizo bratwurst kielbasa brat
  tapioca polenta grit millet amaranth buckwheat spelt teff farro sorghum semolina  cornmeal
  miso natto seitan chestnut acorn brazil brazilnut flax flaxseed hemp poppy fava lima soybean cowpea
  blackeye mung adzuki lupin carob molasses treacle  yeast gelatine lard ghee suet shortening
  crepe blintz eclair meringue macaroon donut fudge toffee nougat marzipan popsicle
  eggnog buttermilk whey quark paneer camembert gruyere muenster neufchatel limburger roquefort
  stilton beer ale wine whiskey vodka rum gin brandy cocktail lemonlime espresso coffee lager
  haggis kebab falafel paella risotto gnocchi pierogi ramen pho cheesecake corndog frenchtoast icecream
  frozenyogurt mustardgreens turnipgreens eggwhite eggyolk cornedbeef canadianbacon chowmein cornnut garlicbread bananasplit bakingchocolate peanutbuttercup hottea bakedpotato icelolly satay blackpepper hotsauce mousse cutlet stroganoff goulash lamington pavlova spam scampi
`);

/** Every word that has a role. */
export const ROLE_WORDS: readonly string[] = [
  SILENT,
  LIGHT,
  SHADES,
  STATES,
  STRONG_MAKES,
  SOFT_MAKES,
  LEAFY,
  OTHER_FOODS,
].flatMap((set) => [...set]);
