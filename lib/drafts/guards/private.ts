import { capital, counted } from "../words/index.ts";
import { findIn, strike, type Check, type GuardGround, type OwnSentence } from "./check.ts";
import { folded, privateSpans } from "./private-words.ts";

type Lines = readonly (readonly OwnSentence[])[];

/** No private name of a child. */
export function checkNames(lines: Lines, { children }: GuardGround): Check {
  const names = children.map(({ privateName }) => privateName);
  const holdsOne = lines.some((line) =>
    line.some(({ text }) => privateSpans(text, names).length > 0),
  );
  const findings = (holdsOne ? children : []).flatMap((child) =>
    findIn(
      lines,
      "names",
      ({ text }) => privateSpans(text, [child.privateName]),
      (words, place, span) => ({
        text: `“${words}” is a private name.`,
        fixes: [
          {
            ...{ kind: "replace", place, span, text: child.onScreenName },
            label: `Write ${child.onScreenName}`,
          },
          strike(place),
        ],
      }),
    ),
  );
  const looked = children.filter(({ privateName }) => privateName.trim() !== "").length;
  return {
    ...{ kind: "names", level: "stop", findings },
    title: "On-screen names only",
    passed: `${capital(counted(looked, "private name", "private names"))} looked for, none found.`,
  };
}

/** No school, street, town or other word that stays at home. */
export function checkPlaces(lines: Lines, { children, privateWords }: GuardGround): Check {
  const names = new Set(children.map(({ privateName }) => folded(privateName).plain.trim()));
  const words = privateWords.filter((word) => !names.has(folded(word).plain.trim()));
  const findings = findIn(
    lines,
    "places",
    ({ text }) => privateSpans(text, words),
    (found, place) => ({
      text: `“${found}” is on the list of words that never leave.`,
      fixes: [strike(place)],
    }),
  );
  return {
    ...{ kind: "places", level: "stop", findings },
    title: "No school, no address",
    passed:
      words.length === 0
        ? "No private words are listed in the Series bible yet."
        : `${capital(counted(words.length, "word", "words"))} looked for, none found.`,
  };
}
