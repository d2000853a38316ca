/** What the words of a label say about allergens. */
export { readAllergens, type LabelReading, type ToldAllergen } from "./read-allergens.ts";
