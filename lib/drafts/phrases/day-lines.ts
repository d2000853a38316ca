import { longWeekday, type Day } from "#lib/calendar/index.ts";
import { capital, definite, isolated, listOf, quoted, type Noun } from "../words/index.ts";
import type { Bank } from "./bank.ts";

type Packed = {
  readonly tense: "did" | "will";
  readonly date: Day;
  readonly angle: string;
  readonly tins: number;
  readonly foods: readonly string[];
};

/** What went, or will go, into the tins of a day. */
export function packedLines({ tense, date, angle, tins, foods }: Packed): Bank {
  const day = longWeekday(date);
  const list = listOf(foods);
  const tin = tins === 1 ? "tin" : "tins";
  const name = isolated(angle);
  if (tense === "will") {
    return angle === ""
      ? {
          plain: [
            `On ${day} we will pack ${list}.`,
            `${day}’s plan: ${list}.`,
            `${day}’s ${tin} will hold ${list}.`,
          ],
        }
      : {
          plain: [
            `${day} will be “${name}”: ${list}.`,
            `For ${day} the idea is “${name}”, with ${list}.`,
            `${day}’s ${tin}, “${name}”, will hold ${list}.`,
          ],
        };
  }
  return angle === ""
    ? {
        plain: [
          `On ${day} we packed ${list}.`,
          `${day}’s ${tin} held ${list}.`,
          `${day}: ${list}.`,
          `Into ${day}’s ${tin} went ${list}.`,
          `${day} brought ${list}.`,
        ],
      }
    : {
        plain: [
          `${day} was “${name}”: ${list}.`,
          `“${name}” was the idea for ${day}, so we packed ${list}.`,
          `On ${day}, for “${name}”, we packed ${list}.`,
          `We called ${day}’s lunch “${name}” and packed ${list}.`,
          `${day}, “${name}”: ${list}.`,
        ],
      };
}

/** A swap: what stayed behind, why, and what stepped in. */
export function swapLines(swap: {
  readonly date: Day;
  readonly out: Noun;
  readonly stepsIn: Noun | null;
  readonly reason: string;
}): Bank {
  const day = longWeekday(swap.date);
  const out = definite(swap.out.bare);
  const why = swap.reason === "" ? "" : ` Our note from the morning: ${quoted(swap.reason)}`;
  if (swap.stepsIn === null) {
    return {
      plain: [
        `${capital(out)} stayed behind on ${day}.${why}`,
        `We left out ${out} on ${day}.${why}`,
      ],
    };
  }
  const stepsIn = swap.stepsIn.some;
  const theirs = swap.out.isMany ? "their" : "its";
  return {
    plain: [
      `On ${day} ${stepsIn} stepped in for ${out}.${why}`,
      `We had planned ${swap.out.some} for ${day}, but ${stepsIn} went in instead.${why}`,
      `${capital(out)} stayed behind on ${day}, and ${stepsIn} took ${theirs} place.${why}`,
    ],
  };
}

/** The minutes a morning took. */
export function minutesLines({
  date,
  minutes,
}: {
  readonly date: Day;
  readonly minutes: number;
}): Bank {
  const day = longWeekday(date);
  const long = minutes === 1 ? "1 minute" : `${minutes} minutes`;
  return {
    plain: [
      `${day} took ${long} to pack.`,
      `It took ${long} on ${day}, empty tin to shut lid.`,
      `Packing time on ${day}: ${long}.`,
      `The lid was on after ${long} on ${day}.`,
    ],
  };
}
