import { groupBy, isPresent } from "#lib/base/index.ts";
import type { DraftItem, EpisodeRecords, ProductRecord } from "../records.ts";
import { closed, capital, definite, kindOf } from "../words/index.ts";
import type { Fact } from "./fact.ts";
import { tenseOf, toldItems } from "./told-items.ts";

/** What was given or paid, where things were found, and the allergens that labels named. */
export function goodsFacts(records: EpisodeRecords): Fact[] {
  const told = records.lunches.filter((lunch) => tenseOf(lunch, records));
  const packed = told.filter((lunch) => lunch.isPacked);
  const shown = (packed.length > 0 ? packed : told).flatMap(toldItems);
  return [...disclosures(told.flatMap(toldItems)), ...found(shown), allergens(shown)].filter(
    isPresent,
  );
}

/** Material connections, each product once (16 CFR 255.5). */
function disclosures(items: readonly DraftItem[]): Fact[] {
  const products = groupBy(
    items.filter((item) => item.product && item.product.provenance !== "bought"),
    (item) => item.product?.id,
  );
  return [...products.values()].flatMap((group) => {
    const product = group[0]?.product;
    if (!product) return [];
    const text = disclosureText(product);
    return [
      {
        ...{ id: `disclosure:${product.id}`, kind: "disclosure", on: null },
        detail: { kind: "disclosure", text, spoken: text },
        refs: [
          { table: "Product", id: product.id },
          ...group.map((item) => ({ table: "LunchItem" as const, id: item.id })),
        ],
        label: `How we came by ${product.name}`,
        rows: [
          ["Product", product.name],
          ["Came as", product.provenance],
        ],
      } satisfies Fact,
    ];
  });
}

function disclosureText({ name, provenance, disclosure }: ProductRecord): string {
  if (disclosure !== "") return capital(closed(disclosure));
  const thing = definite(name || "a product in this video");
  switch (provenance) {
    case "sponsored":
      return capital(closed(`This is an ad: we were paid to show ${thing}`));
    case "affiliate":
      return capital(closed(`We earn money when you buy ${thing} through our link`));
    default:
      return capital(closed(`We were given ${thing} for free`));
  }
}

function found(items: readonly DraftItem[]): Fact[] {
  const byFood = groupBy(
    items.filter((item) => item.shop !== null && item.shop !== ""),
    (item) => `${item.foodId} ${item.shop ?? ""}`,
  );
  return [...byFood.values()].flatMap((group) => {
    const [item] = group;
    if (!item?.shop) return [];
    return [
      {
        ...{ id: `found:${item.foodId}:${item.shop}`, kind: "found", on: null },
        detail: {
          kind: "found",
          food: kindOf({ name: item.food, countUnit: item.countUnit }),
          shop: item.shop,
        },
        refs: group.flatMap((one) => [
          { table: "LunchItem" as const, id: one.id },
          { table: "Food" as const, id: one.foodId },
        ]),
        label: `Where ${item.food} came from`,
        rows: [
          ["Food", item.food],
          ["Shop", item.shop],
        ],
      } satisfies Fact,
    ];
  });
}

/** Allergen tags as running text has them. */
const ALLERGEN_WORDS: Readonly<Record<string, string>> = {
  crustacean: "crustaceans",
  mollusc: "molluscs",
  "tree-nut": "tree nuts",
  peanut: "peanuts",
};

function allergenWords(tags: readonly string[]): string[] {
  return [...new Set(tags)].map((tag) => ALLERGEN_WORDS[tag] ?? tag).sort();
}

function allergens(items: readonly DraftItem[]): Fact | undefined {
  const holding = items.filter((item) => item.allergens.length + item.maybeAllergens.length > 0);
  const names = allergenWords(holding.flatMap((item) => item.allergens));
  const maybe = allergenWords(holding.flatMap((item) => item.maybeAllergens)).filter(
    (name) => !names.includes(name),
  );
  if (names.length === 0) return undefined;
  return {
    ...{ id: "allergens", kind: "allergens", on: null },
    detail: { kind: "allergens", names, maybe },
    refs: holding.flatMap((item) => [
      { table: "LunchItem", id: item.id },
      { table: "Food", id: item.foodId },
    ]),
    label: "Allergens in the week’s foods",
    rows: [
      ["Named in the Larder", names.join(", ")],
      ["In some makes", maybe.join(", ") || "none named"],
    ],
  };
}
