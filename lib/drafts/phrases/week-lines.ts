import { longWeekday, type Day } from "#lib/calendar/index.ts";
import { capital, definite, listOf, numberWord, ordinal, type Noun } from "../words/index.ts";
import type { Bank } from "./bank.ts";

/** A food's first time, or its return after weeks away. */
export function firstLines(food: Noun, tense: "did" | "will"): Bank {
  const name = food.bare;
  if (tense === "will") {
    return {
      plain: [
        `Coming to the tins for the first time: ${name}.`,
        `A first for us this week: ${name}.`,
      ],
    };
  }
  return {
    plain: [
      `A first for us: ${name}.`,
      `We had never packed ${name} before.`,
      `New in the tins this week: ${name}.`,
    ],
  };
}

/** A food that was away for weeks. */
export function returnLines(food: Noun, weeks: number, tense: "did" | "will"): Bank {
  const name = food.bare;
  const long = `${numberWord(weeks)} weeks`;
  if (tense === "will") {
    return { plain: [`Back after ${long}: ${name}.`, `After ${long} away, ${name} will be back.`] };
  }
  return {
    plain: [
      `Back after ${long}: ${name}.`,
      `It had been ${long} since we last packed ${name}.`,
      `We had not packed ${name} for ${long}.`,
    ],
  };
}

/** A round number of lunches, or of years. */
export function milestoneLines(count: number, date: Day | null): Bank {
  if (date !== null) {
    const day = longWeekday(date);
    return {
      plain: [
        `${day}’s lunch was our ${ordinal(count)}.`,
        `On ${day} we packed lunch number ${count}.`,
      ],
    };
  }
  const years = count === 1 ? "a year" : `${numberWord(count)} years`;
  return {
    plain: [`This week we have been at it for ${years}.`, `That makes ${years} of lunches.`],
  };
}

/** How many tins came home empty. */
export function tallyLines({
  empty,
  tins,
}: {
  readonly empty: number;
  readonly tins: number;
}): Bank {
  const of = numberWord(tins);
  if (empty === 0)
    return {
      plain: [
        `None of the ${of} tins came home empty.`,
        `Something came back in every one of the ${of} tins.`,
      ],
    };
  if (empty === tins) {
    return {
      plain: [tins === 2 ? "Both tins came home empty." : `All ${of} tins came home empty.`],
    };
  }
  const count = capital(numberWord(empty));
  return {
    plain: [
      `${count} of the ${of} tins came home empty.`,
      `Tins that came home empty: ${numberWord(empty)} of ${of}.`,
    ],
  };
}

/** What everyone finished, and what nobody touched. */
export function finishedLines(foods: readonly Noun[], children: number): Bank {
  const list = theList(foods);
  if (children === 1)
    return { plain: [`Finished to the last bite: ${list}.`, `No leftovers of ${list}.`] };
  const who = children === 2 ? "both" : "everyone";
  return {
    plain: [
      `Finished to the last bite by ${who}: ${list}.`,
      `${capital(who)} finished every bite of ${list}.`,
    ],
  };
}

/** What came home as it went. */
export function untouchedLines(foods: readonly Noun[]): Bank {
  const list = theList(foods);
  return { plain: [`No takers this time for ${list}.`, `Left untouched this week: ${list}.`] };
}

function theList(foods: readonly Noun[]): string {
  const [first = "", ...others] = foods.map(({ bare }) => bare);
  return listOf([definite(first), ...others]);
}
