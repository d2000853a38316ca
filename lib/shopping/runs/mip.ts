import { dividedBy, fraction, numberOf } from "#lib/base/index.ts";
import type { ItemModel, RunModel } from "./compile.ts";
import type { TripSet } from "./tally.ts";

/** A mixed-integer program to minimise, for whichever solver the caller has. */
export type Mip = {
  /** The program in the LP text format that solvers read. */
  readonly lp: string;
  /** Values of the binary columns of a known solution, to start from. */
  readonly start: Readonly<Record<string, number>>;
  /** Relative gap at which to stop. */
  readonly gap: number;
};

/** What a solver found: the value of each column, and a proven lower bound of the LP's objective. */
export type MipAnswer = {
  /** Undefined when no solution was found within the solver's limits. */
  readonly values: Readonly<Record<string, number>> | undefined;
  readonly bound: number;
};

/** A mixed-integer solver, handed in. */
export type SolveMip = (program: Mip) => Promise<MipAnswer>;

/**
 * The runs as a program: y = a trip is made, n = purchases of an option, a = the part of a need that an
 * option serves. Rows: every need is served; an option serves no more than it holds; and nothing is
 * served by a trip that is not made, need by need, which tightens the relaxation. Opened lives are not
 * in it: with them it is a relaxation.
 */
export function mipOf(model: RunModel, start: TripSet, gap: number): Mip {
  const trips = model.trips.map((trip, index) => `${trip.cents} y${index}`);
  const parts = model.items.map(itemRows);
  const objective = [...trips, ...parts.flatMap((part) => part.costs)];
  const binaries = model.trips.map((_, index) => `y${index}`);
  const lines = [
    "Minimize",
    ` obj: ${objective.join("\n + ")}`,
    "Subject To",
    ...parts.flatMap((part) => part.rows),
    "Binary",
    ...binaries.map((name) => ` ${name}`),
    "General",
    ...parts.flatMap((part) => part.integers.map((name) => ` ${name}`)),
    "End",
  ];
  const values = binaries.map((name, index) => [name, start[index] ? 1 : 0] as const);
  return { lp: lines.join("\n"), start: Object.fromEntries(values), gap };
}

/** The trips an answer makes, or undefined when it holds none. */
export function tripsFromMip(model: RunModel, { values }: MipAnswer): TripSet | undefined {
  if (!values) return undefined;
  return model.trips.map((trip, index) => trip.cents === 0 || (values[`y${index}`] ?? 0) > 0.5);
}

function itemRows(
  model: ItemModel,
  item: number,
): {
  readonly costs: string[];
  readonly rows: string[];
  readonly integers: string[];
} {
  const grams = (units: number): number =>
    numberOf(dividedBy(fraction(BigInt(units), 1n), model.unitsPerGram));
  const needGrams = model.ends.map((end, need) => grams(end - (model.ends[need - 1] ?? 0)));
  const serving = needGrams.map((): string[] => []);
  const rows: string[] = [];
  const options = model.options.map((option, index) => {
    const name = `${item}_${index}`;
    const held: string[] = [];
    for (let need = option.firstNeed; need <= option.lastNeed; need += 1) {
      const part = `a${name}_${need}`;
      serving[need]?.push(part);
      held.push(`${needGrams[need] ?? 0} ${part}`);
      rows.push(` ${part} - y${option.trip} <= 0`);
    }
    rows.push(` ${held.join(" + ")} - ${grams(option.size)} n${name} <= 0`);
    return { cost: `${option.cents} n${name}`, integer: `n${name}` };
  });
  rows.push(...serving.map((parts) => ` ${parts.join(" + ")} = 1`));
  return {
    costs: options.map((option) => option.cost),
    rows,
    integers: options.map((option) => option.integer),
  };
}
