import { capital, counted, numberWord } from "../words/index.ts";
import type { Bank } from "./bank.ts";

type Theme = {
  readonly title: string;
  readonly lunches: number;
  readonly tense: "did" | "will";
};

/** First sentences of an episode's texts. */
export function openers({ title, lunches, tense }: Theme): Bank {
  if (lunches === 0) return { plain: [`This week’s theme is ${title}.`] };
  return tense === "did" ? past(title, lunches) : future(title, lunches);
}

function past(title: string, count: number): Bank {
  const lunches = counted(count, "lunch", "lunches");
  const mornings = counted(count, "school morning", "school mornings");
  const times = count === 1 ? "once" : count === 2 ? "twice" : `${numberWord(count)} times over`;
  return {
    plain: [
      `${capital(lunches)}, one theme: ${title}.`,
      `The theme this week was ${title}, and here is what went into the tins.`,
      `${title}: that was our week of packed lunches.`,
      `How do you pack ${title} into a lunch tin? We tried it ${times}.`,
      `We gave ${title} ${mornings}. This is how it went.`,
      `${title}, as told by ${lunches}.`,
    ],
    warm: [
      `Welcome to ${title}, our theme for the week.`,
      `Come in, sit down: this week the tins were all about ${title}.`,
    ],
    playful: [
      `${title} came to lunch and stayed for ${counted(count, "day", "days")}.`,
      `Lids off! This week it was ${title}.`,
    ],
  };
}

function future(title: string, count: number): Bank {
  const lunches = counted(count, "lunch", "lunches");
  return {
    plain: [
      `The theme this week will be ${title}: ${lunches}, each one packed before school.`,
      `${title} is the plan for the week.`,
      `This is what we have in mind for ${title}.`,
    ],
    warm: [`We have been looking forward to this one: ${title}.`],
    playful: [`Sharpen the cutters: ${title} is coming.`],
  };
}
