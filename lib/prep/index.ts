/** Prep: orders tasks under time and equipment limits, and proves how early they can end. */
export type {
  Conflict,
  NoSchedule,
  Precedence,
  Schedule,
  SchedulingProblem,
  Task,
  Undecided,
} from "./problem.ts";
export { schedule, USUAL_STEPS } from "./schedule.ts";
