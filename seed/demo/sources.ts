import type { Day, SeasonWindow } from "#lib/calendar/index.ts";
import type { Food, Trick } from "#lib/catalog/index.ts";

/** A theme idea of the catalogue, as far as the demo needs it. */
export type DemoTheme = {
  readonly id: string;
  readonly name: string;
  readonly motifs: readonly string[];
  readonly season: SeasonWindow;
};

/** What a demo series is made from: the day it is loaded, and the reference catalogue. */
export type DemoSources = {
  readonly today: Day;
  readonly foods: readonly Food[];
  readonly tricks: readonly Trick[];
  readonly themes: readonly DemoTheme[];
};
