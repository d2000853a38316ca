/** Words: nouns with their articles and plurals, lists, numbers, and text made fit for a sentence. */
export { listOf } from "./list.ts";
export { definite, kindOf, nounOf, type Noun } from "./noun.ts";
export { counted, minutesText, numberWord, ordinal } from "./number.ts";
export { capital, closed, isolated, quoted, tidy } from "./tidy.ts";
export { trickPhrase } from "./trick.ts";
