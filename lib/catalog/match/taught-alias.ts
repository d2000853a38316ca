import { readQuantity } from "../quantity/read-quantity.ts";
import { plainText, type NamedFood } from "./prepare-foods.ts";

const ALIAS_LENGTH_MAX = 120;

/**
 * The alias a corrected match teaches: the phrase as typed, without its amount. Null when the food
 * answers to it already or when nothing is left to call it by.
 */
export function taughtAlias(phrase: string, food: NamedFood): string | null {
  const alias = readQuantity(phrase).rest.trim().slice(0, ALIAS_LENGTH_MAX);
  const text = plainText(alias);
  const own = [food.name, ...(food.aliases ?? [])].map(plainText);
  return text === "" || own.includes(text) ? null : alias;
}
