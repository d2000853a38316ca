/** Quantities: reading them, exact measures, weighing, and writing them as a cook does. */
export { EACH, SERVING } from "./count-units.ts";
export { describeAmount, describeQuantity, describeWeighProblem } from "./describe-quantity.ts";
export { gramsOf, type WeighableFood, type WeighProblem } from "./grams-of.ts";
export {
  convert,
  CUP_ML,
  isMeasureName,
  LABEL_CUP_ML,
  MEASURES,
  measureOf,
  type Measure,
  type MeasureName,
} from "./measures.ts";
export { readQuantity, type Quantity, type ReadQuantity } from "./read-quantity.ts";
