import { minutesOfDay, type ClockTime } from "#lib/calendar/index.ts";
import { isFor, type BoxChild, type BoxItem, type BoxLunch } from "../box.ts";
import { findingKey, type Finding } from "../finding.ts";
import type { SourceId } from "../source.ts";
import { listOf, sentence } from "../words.ts";
import type { Carrying } from "./carrying.ts";
import { remedyWords, told } from "./heat-words.ts";
import { predictCold, predictHot, type Prediction, type Surroundings } from "./predict.ts";
import { remedyForCold, remedyForHot } from "./remedies.ts";
import { outMinutesMax } from "./schemes.ts";
import { isTimeSensitive } from "./time-sensitive.ts";

/** How lunch travels and when it is eaten. */
export type Journey = {
  readonly carrying: Carrying;
  readonly departure: ClockTime;
  readonly lunchAt: ClockTime;
};

/** The trick that puts any food into the hot jar. */
const FLASK = "food-flask";

/** Hot by its nature or by the flask it goes in; what may be either is packed cold. */
function isHot({ food, trickIds }: BoxItem): boolean {
  return food.holding === "hot" || trickIds.includes(FLASK);
}

/**
 * Temperatures from the lid to lunch, for the child whose box fares worst, judged by consumer guidance.
 * The middle of the model decides what is worth a look; its unkind end leaves a note.
 */
export function checkTemperature(
  lunch: BoxLunch,
  children: readonly BoxChild[],
  { carrying, departure, lunchAt }: Journey,
): readonly Finding[] {
  const minutes = minutesOfDay(lunchAt) - minutesOfDay(departure) + carrying.lidMinutes;
  if (minutes <= 0 || children.length === 0) return [];
  const around = surroundingsOf(lunch, carrying, minutes / 60);
  const asked = { lunch, children, carrying, around, lunchAt };
  return [...hotFindings(asked), ...coldFindings(asked)];
}

type Asked = {
  readonly lunch: BoxLunch;
  readonly children: readonly BoxChild[];
  readonly carrying: Carrying;
  readonly around: Surroundings;
  readonly lunchAt: ClockTime;
};

/** Indoors it is the room's, or the day's where that is hotter; outdoors the day's. K off: custom. */
function surroundingsOf({ outside }: BoxLunch, carrying: Carrying, hours: number): Surroundings {
  const { indoorC } = carrying;
  const isOut = outside !== null && (carrying.waits === "outdoors" || outside.celsius > indoorC);
  if (!isOut) return { hours, roomC: indoorC, roomOffK: 2 };
  return { hours, roomC: outside.celsius, roomOffK: outside.isTyped ? 1 : 5 };
}

function hotFindings({ lunch, children, carrying, around, lunchAt }: Asked): Finding[] {
  const minutesMax = outMinutesMax(around.roomC);
  return lunch.items.filter(isHot).flatMap((item): Finding[] => {
    const worst = worstOf(children, [item], (factor) => predictHot(item, factor, carrying, around));
    if (!worst || worst.prediction.unkind.minutesOut <= minutesMax) return [];
    const { prediction, factor } = worst;
    const end = prediction.mid.minutesOut > minutesMax ? "mid" : "unkind";
    const remedy = remedyForHot(item, factor, carrying, around, { minutesMax, end });
    return [
      {
        ...aboutHeat("hot", [item]),
        level: end === "mid" ? "look" : "note",
        sentence: `${sentence(item.food.name)} in the jar: ${told(prediction, end, { wrongSide: "below 60 °C", lunchAt, minutesMax })}.`,
        remedy: remedyWords(remedy, "Pack another food that day."),
        sources: [
          ...(["heat-fsis", "heat-usda-2019"] as const),
          ...(carrying.jarReading === null ? (["heat-jis"] as const) : []),
          ...(["heat-newton", "heat-foods"] as const),
        ],
      },
    ];
  });
}

function coldFindings({ lunch, children, carrying, around, lunchAt }: Asked): Finding[] {
  const minutesMax = outMinutesMax(around.roomC);
  const lying = lunch.items.filter((item) => !isHot(item));
  const cold = lying.filter(({ food }) => food.holding === "cold" || food.holding === "either");
  const sensitive = cold.filter(({ food }) => isTimeSensitive(food));
  if (cold.length === 0) return [];
  const spokenOf = sensitive.length > 0 ? sensitive : cold;
  const worst = worstOf(children, spokenOf, (factor, child) =>
    predictCold(
      lying.filter((item) => isFor(item, child)),
      factor,
      carrying,
      around,
    ),
  );
  if (!worst || worst.prediction.unkind.minutesOut <= minutesMax) return [];
  const { prediction, factor, child } = worst;
  const end = prediction.mid.minutesOut > minutesMax ? "mid" : "unkind";
  // Cut produce that no code names keeps cold for its own sake: a note, and only when it is sure.
  if (sensitive.length === 0 && end === "unkind") return [];
  const theirs = lying.filter((item) => isFor(item, child));
  const remedy = remedyForCold(theirs, factor, carrying, around, { minutesMax, end });
  return [
    {
      ...aboutHeat("cold", spokenOf),
      level: end === "mid" && sensitive.length > 0 ? "look" : "note",
      sentence: `${sentence(listOf(spokenOf.map(({ food }) => food.name)))}: ${told(prediction, end, { wrongSide: "above 4.4 °C", lunchAt, minutesMax })}.`,
      remedy: remedyWords(remedy, "Pack what needs no cold that day."),
      sources: [
        "heat-fsis",
        sensitive.length > 0 ? "heat-tcs" : "heat-cut-produce",
        ...(carrying.bagReading === null ? (["heat-bag"] as const) : []),
        ...(["heat-newton", "heat-ice", "heat-foods"] satisfies SourceId[]),
      ],
    },
  ];
}

type Worst = {
  readonly child: BoxChild;
  readonly factor: number;
  readonly prediction: Prediction;
};

/** The child whose box is out longest, among those who get any of these items. */
function worstOf(
  children: readonly BoxChild[],
  items: readonly BoxItem[],
  predict: (factor: number, child: BoxChild) => Prediction | undefined,
): Worst | undefined {
  return children
    .filter((child) => items.some((item) => isFor(item, child)))
    .flatMap((child): Worst[] => {
      const factor = child.portionFactor;
      const prediction = predict(factor, child);
      return prediction ? [{ child, factor, prediction }] : [];
    })
    .sort(
      (one, other) =>
        other.prediction.mid.minutesOut - one.prediction.mid.minutesOut ||
        other.prediction.unkind.minutesOut - one.prediction.unkind.minutesOut,
    )[0];
}

function aboutHeat(
  about: string,
  items: readonly BoxItem[],
): Pick<Finding, "key" | "kind" | "itemIds" | "mayKeep"> {
  return {
    key: findingKey(
      `heat:${about}`,
      items.map(({ food }) => food.id),
    ),
    kind: "temperature",
    itemIds: items.map(({ id }) => id),
    mayKeep: true,
  };
}
