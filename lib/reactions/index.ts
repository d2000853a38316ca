/** Reactions: from what came back and what was said to what may be expected, and how surely. */
export {
  eatenFromShare,
  eatenShare,
  isTasting,
  wasteShare,
  type Eaten,
  type Verdict,
} from "./verdict.ts";
export {
  ageInMonths,
  facePointsFor,
  faceScale,
  faceValue,
  nearestFace,
  type FacePoints,
  type FaceStep,
} from "./face.ts";
export { estimateAll, type Acceptance, type FullDay, type Learned } from "./estimate.ts";
export { layOut, type Series } from "./series.ts";
export { certainty, USUAL_STRENGTHS, type Strengths } from "./strengths.ts";
export { fitStrengths, foretellingLoss, logLoss } from "./fit.ts";
export { isRefusal, type History } from "./history.ts";
export {
  CARERS_STOP,
  DEPENDABLE,
  REST_DAYS,
  standingOf,
  TASTINGS_GUIDE,
  type Standing,
  type StandingKind,
} from "./standing.ts";
export { describeStanding, describeTastings } from "./describe-standing.ts";
export { listTryAgain, type TryAgain } from "./try-again.ts";
export { trickEffects, type TrickedVerdict, type TrickEffect } from "./tricks.ts";
export {
  byStanding,
  eatenByPart,
  eatenByPeriod,
  eatenByWeek,
  newFoods,
  wasteOf,
  type LedgerLine,
  type ShareEaten,
  type Waste,
} from "./ledger.ts";
export { pathOf, type PathPoint } from "./path.ts";
export {
  betaBinomialLogLikelihood,
  betaFromMoments,
  betaQuantile,
  fitBetaPrior,
  updateBeta,
  type BetaPrior,
  type Tally,
} from "./beta.ts";
export { shrinkToMean, type Measured, type Shrunk } from "./shrink.ts";
export {
  settle,
  type VerdictConflict,
  type VerdictEntry,
  type VerdictField,
  type VerdictFields,
} from "./settle.ts";
export {
  NO_FACTS,
  settleDayFacts,
  type DayFacts,
  type DayFactsConflict,
  type DayFactsEntry,
} from "./day-facts.ts";
