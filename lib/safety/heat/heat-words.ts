import type { ClockTime } from "#lib/calendar/index.ts";
import type { Prediction } from "./predict.ts";

/**
 * "about 9 °C (6 to 13) at 12:15, above 4.4 °C for about 2 h 20 min; guidance at home allows 2 h".
 * `end` is the end of the model that goes beyond the guidance.
 */
export function told(
  prediction: Prediction,
  end: "mid" | "unkind",
  { wrongSide, lunchAt, minutesMax }: Words,
): string {
  const { mid, kind, unkind } = prediction;
  const ends = [kind.atLunchC, unkind.atLunchC]
    .map((celsius) => Math.round(celsius))
    .sort((one, other) => one - other);
  const out = `${wrongSide} for about ${spell(prediction[end].minutesOut)}`;
  return `about ${Math.round(mid.atLunchC)} °C (${ends.join(" to ")}) at ${lunchAt}, ${
    end === "mid" ? out : `and at the unkind end of the model ${out}`
  }; guidance at home allows ${spell(minutesMax)}`;
}

type Words = {
  readonly wrongSide: string;
  readonly lunchAt: ClockTime;
  readonly minutesMax: number;
};

/** Minutes to the nearest five in words: "2 h 20 min". */
function spell(minutes: number): string {
  const rounded = Math.round(minutes / 5) * 5;
  const [hours, rest] = [Math.floor(rounded / 60), rounded % 60];
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** What would be enough, as a sentence. */
export function remedyWords(remedy: string | null, otherwise: string): string {
  if (remedy === null) return `Nothing that the model tries is enough. ${otherwise}`;
  return `In the model, ${remedy} would be enough; a thermometer reading tells more.`;
}
