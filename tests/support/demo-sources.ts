import type { Day } from "#lib/calendar/index.ts";
import type { DemoSources } from "#seed/demo/index.ts";
import { referenceFoods, referenceThemes, referenceTricks } from "#seed/index.ts";

/** The reference catalogue, as the demo takes it. */
export function demoSources(today: Day): DemoSources {
  return {
    today,
    foods: referenceFoods().map(({ food }) => food),
    tricks: referenceTricks(),
    themes: referenceThemes(),
  };
}
