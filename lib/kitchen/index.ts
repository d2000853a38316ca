/** Kitchen: a lunch's steps, their minutes, and the plan of the night before and the morning. */
export { learnMinutes } from "./learn-minutes.ts";
export { listSteps, PACKING, type KitchenItem, type Recorded } from "./list-steps.ts";
export type { LooseHold } from "./morning.ts";
export type { Placed } from "./order.ts";
export { planKitchen, type KitchenPlan, type Proven } from "./plan-kitchen.ts";
export { isWatched, type Kitchen, type KitchenStep } from "./step.ts";
export { packMinutes, stepOfTrick, stepsOfFood } from "./usual-steps.ts";
export { waysOut, type Sacrifice, type WayOut } from "./when-late.ts";
