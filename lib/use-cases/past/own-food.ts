import { hash32 } from "#lib/base/index.ts";
import { ALLERGENS, Food, type Part } from "#lib/catalog/index.ts";

const GROUPS: Readonly<Record<Part, Food["group"]>> = {
  ...{ main: "protein", protein: "protein", grain: "grain", vegetable: "vegetable" },
  ...{ fruit: "fruit", dairy: "dairy", dip: "fat", treat: "treat", drink: "drink", extra: "treat" },
};

/**
 * A food that the Larder knows by name only. Nobody has read its label, so it may hold every allergen
 * until the user says otherwise: a missing note must never look like a cleared one.
 */
export function ownFood(name: string, part: Part, taken: ReadonlySet<string>): Food {
  const id = freeId(name, taken);
  return Food.parse({
    ...{ id, name, aliases: [], family: id, group: GROUPS[part], parts: [part] },
    ...{ allergens: [], maybeAllergens: [...ALLERGENS], traits: [], colours: [], motifs: [] },
    ...{ pattern: "plain", form: "soft", holding: "cold", sliceable: false, seasonMonths: null },
    shelf: {
      ...{ pantryDays: null, pantryOpenedDays: null, fridgeDays: null, fridgeOpenedDays: null },
      ...{ cutDays: null, preparedDays: null, freezerDays: null },
    },
    ...{ yieldFactor: 1, servingGrams: 50, gramsPerCup: null, unitWeights: {}, countUnit: null },
    ...{ servingCents: 0, prepSteps: [], restDays: null, isStaple: false },
  });
}

function freeId(name: string, taken: ReadonlySet<string>): string {
  const plain = name.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  const slug = plain.replaceAll(/[^a-z0-9]+/g, "-").replaceAll(/^-+|-+$/g, "");
  const base = slug === "" ? `food-${hash32(name).toString(36)}` : slug.slice(0, 100);
  let id = base;
  for (let count = 2; taken.has(id); count += 1) id = `${base}-${count}`;
  return id;
}
