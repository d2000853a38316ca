/** Recipe: the ingredients of a house recipe as typed, and what it makes. */
export { readIngredients, type Ingredients } from "./read-ingredients.ts";
