import type { Detail } from "../facts/fact.ts";
import { capital, closed, listOf } from "../words/index.ts";
import type { Bank } from "./bank.ts";
import { minutesLines, packedLines, swapLines } from "./day-lines.ts";
import { openers } from "./opener.ts";
import { quoteLines, verdictLines } from "./verdict-lines.ts";
import {
  finishedLines,
  firstLines,
  milestoneLines,
  returnLines,
  tallyLines,
  untouchedLines,
} from "./week-lines.ts";

/** Every way to say a fact in one full sentence. */
export function bankFor(detail: Detail): Bank {
  switch (detail.kind) {
    case "disclosure":
      return { plain: [detail.text] };
    case "theme":
      return openers(detail);
    case "packed":
      return packedLines(detail);
    case "swap":
      return swapLines(detail);
    case "minutes":
      return minutesLines(detail);
    case "verdict":
      return verdictLines(detail);
    case "quote":
      return quoteLines(detail);
    case "first":
      return firstLines(detail.food, detail.tense);
    case "return":
      return returnLines(detail.food, detail.weeks, detail.tense);
    case "tally":
      return tallyLines(detail);
    case "finished":
      return finishedLines(detail.foods, detail.children);
    case "untouched":
      return untouchedLines(detail.foods);
    case "found":
      return { plain: [`${capital(detail.food.bare)}: ${detail.shop}`] };
    case "allergens":
      return {
        plain: [
          `Allergens on record for this week’s foods: ${listOf(detail.names)}.${detail.maybe.length > 0 ? ` Some makes also hold ${listOf(detail.maybe)}.` : ""} Makes differ, so read your own labels.`,
        ],
      };
    case "milestone":
      return milestoneLines(detail.count, detail.date);
    case "promise":
      return {
        plain: [
          closed(
            detail.keptNow
              ? `We promised, and here it is: ${detail.what}`
              : `Still to come: ${detail.what}`,
          ),
        ],
      };
    case "next":
      return {
        plain: [
          `Next time: ${closed(detail.title)}`,
          `Coming next: ${closed(detail.title)}`,
          `The next theme on the slate is ${closed(detail.title)}`,
        ],
      };
  }
}
