import { addDays, weekdayOf, type Day } from "#lib/calendar/index.ts";
import type { Food } from "#lib/catalog/index.ts";
import type { Favourite } from "./larder.ts";
import type { DemoPrice, DemoProduct, DemoProductShop, DemoStock } from "./records.ts";

/** Products, where they are sold and what they cost over the year. */
export type Goods = {
  readonly products: DemoProduct[];
  readonly productShops: DemoProductShop[];
  readonly prices: DemoPrice[];
};

type Counter = {
  readonly shopId: string;
  readonly aisle: string;
  readonly named: string;
  /** Servings in a pack. */
  readonly servings: number;
};

const BAKERY = new Set([
  "sandwich-bread",
  "flatbread",
  "bread-roll",
  "bagel",
  "croissant",
  "scone",
]);
const BAKES = new Set(["cookie", "muffin", "cracker", "sweet-cracker"]);
const FISH = new Set(["salmon", "tuna", "surimi", "seaweed"]);

function counterOf({ food, part }: Favourite): Counter {
  const { family } = food;
  const at = (shopId: string, aisle: string, named: string, servings: number): Counter => ({
    ...{ shopId, aisle, named, servings },
  });
  if (BAKERY.has(family)) return at("miller-and-daughter", "bread", "morning bake", 10);
  if (family === "cracker") return at("miller-and-daughter", "crackers", "paper bag", 10);
  if (BAKES.has(family)) return at("miller-and-daughter", "small bakes", "by the half dozen", 6);
  if (FISH.has(family)) return at("saturday-fish-steps", "the slab", "wrapped in paper", 4);
  if (part === "fruit") return at("quayside-greens", "fruit", "from the crate", 5);
  if (part === "vegetable") return at("quayside-greens", "roots and leaves", "loose", 5);
  if (food.holding === "cold") return at("lamp-street-market", "cold", "small pack", 5);
  return at("lamp-street-market", "dry goods", "plain bag", 8);
}

/** A product for every food that is bought, its label read: no product of the house says "sesame". */
export function stockShops(favourites: readonly Favourite[], start: Day): Goods {
  const goods: Goods = { products: [], productShops: [], prices: [] };
  const seen = new Set<string>();
  for (const favourite of favourites) {
    const { food } = favourite;
    if (food.id.startsWith("house-") || seen.has(food.id)) continue;
    seen.add(food.id);
    const counter = counterOf(favourite);
    const product = productOf(food, counter);
    goods.products.push(product);
    sell(goods, product, counter.shopId, counter.aisle, start, 1);
    if (counter.shopId === "quayside-greens")
      sell(goods, product, "lamp-street-market", "fruit and veg", start, 1.12);
  }
  return goods;
}

function productOf(food: Food, { named, servings }: Counter): DemoProduct {
  return {
    ...{ id: `bought-${food.id}`, foodId: food.id, flavour: "" },
    name: `${capital(food.name)}, ${named}`,
    packGrams: Math.round((food.servingGrams * servings) / 10) * 10,
    ...{ provenance: "bought" as const, disclosure: "" },
    allergens: food.allergens,
    maybe: food.maybeAllergens.filter((allergen) => allergen !== "sesame"),
  };
}

/** Puts a product on sale with a price that crept up twice in the year. */
function sell(
  goods: Goods,
  product: DemoProduct,
  shopId: string,
  aisle: string,
  start: Day,
  dearer: number,
): void {
  const onlyThere = dearer === 1 && shopId !== "lamp-street-market" && shopId !== "quayside-greens";
  goods.productShops.push({ productId: product.id, shopId, aisle, onlyThere });
  const base = Math.max(60, product.packGrams * 0.55) * dearer;
  [1, 1.03, 1.07].forEach((factor, step) => {
    const cents = Math.round((base * factor) / 5) * 5;
    const on = addDays(start, step * 140 + (product.id.length % 9));
    goods.prices.push({
      id: `${product.id}-${shopId}-${step + 1}`,
      productId: product.id,
      shopId,
      cents,
      on,
    });
  });
}

/** A gift that must be told of, and the almonds that may not come to school. */
export const GIFTED = "gifted-crispbread";
export const HONEY_ALMONDS = "honey-almonds";

/** The two products that the demo's stories hang on, where the catalogue has their foods. */
export function addStoryGoods(goods: Goods, foods: readonly Food[], start: Day): void {
  const crispbread = foods.find(({ id }) => id === "crispbread");
  const almonds = foods.find(({ id }) => id === "almonds");
  if (crispbread) {
    goods.products.push({
      ...productOf(crispbread, { shopId: "", aisle: "", named: "gift tin", servings: 10 }),
      ...{ id: GIFTED, name: "Rye crackers, gift tin", flavour: "caraway" },
      ...{
        provenance: "gifted",
        disclosure: "The rye crackers were a gift from Miller & Daughter.",
      },
    });
    const here = { productId: GIFTED, shopId: "miller-and-daughter", aisle: "crackers" };
    goods.productShops.push({ ...here, onlyThere: true });
  }
  if (almonds) {
    const product = {
      ...productOf(almonds, { shopId: "", aisle: "", named: "", servings: 6 }),
      ...{ id: HONEY_ALMONDS, name: "Honey almonds, small bag", flavour: "honey" },
    };
    goods.products.push(product);
    sell(goods, product, "lamp-street-market", "dry goods", start, 1);
  }
}

/** "foodId grams place bought-days-ago opened-days-ago use-by-in"; − where there is none. */
const ON_HAND = [
  "beets 120 fridge 9 7 3",
  "cheddar-cheese 210 fridge 8 5 16",
  "plain-yogurt 180 fridge 6 2 4",
  "carrot-sticks 400 fridge 4 - 12",
  "cucumber-slices 300 fridge 2 - 4",
  "apple 900 fridge 5 - 20",
  "hard-boiled-egg 300 fridge 3 - 4",
  "house-bean-dip 160 fridge 2 2 2",
  "house-fish-cakes 440 freezer 11 - 50",
  "green-peas 600 freezer 20 6 150",
  "house-oat-bar 180 pantry 3 3 5",
  "pasta 700 pantry 30 12 300",
  "white-rice 1200 pantry 45 40 300",
  "chickpeas 480 pantry 33 - 500",
  "crispbread 140 pantry 14 8 60",
  "raisins 220 pantry 26 20 90",
  "blueberries 100 fridge 1 - 6",
  "rye-bread 380 pantry 1 0 4",
];

/** What is in the cupboards today. */
export function onHand(foods: readonly Food[], goods: Goods, today: Day): DemoStock[] {
  const known = new Set<string>(foods.map(({ id }) => id));
  return ON_HAND.flatMap((line, index) => {
    const [foodId = "", grams = "0", place = "fridge", bought = "0", opened = "-", use = "-"] =
      line.split(" ");
    if (!known.has(foodId)) return [];
    const product = goods.products.find((one) => one.foodId === foodId && one.id !== GIFTED);
    const price = goods.prices.find(({ productId }) => productId === product?.id);
    return [
      {
        ...{ id: `stock-${index + 1}`, foodId, productId: product?.id ?? null },
        grams: Number(grams),
        boughtOn: shoppedBefore(addDays(today, -Number(bought))),
        openedOn: opened === "-" ? null : addDays(today, -Number(opened)),
        useBy: use === "-" ? null : addDays(today, Number(use)),
        place: place as DemoStock["place"],
        paidCents: price?.cents ?? null,
      },
    ];
  });
}

/** No shop of Tin Harbour is open on a Sunday. */
function shoppedBefore(on: Day): Day {
  return weekdayOf(on) === 7 ? addDays(on, -1) : on;
}

function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
