/** Shorter names are looked for as whole words only: "Al" is not given away by "Pal". */
const PART_MIN = 3;

/**
 * True when a name for the screen gives a private name away: it equals it, or contains it or any word
 * of it, whatever the case and accents.
 */
export function givesAway(onScreenName: string, privateName: string): boolean {
  if (onScreenName.trim() === privateName.trim()) return true;
  const shown = wordsOf(onScreenName);
  const text = shown.join(" ");
  return wordsOf(privateName).some((word) =>
    word.length < PART_MIN ? shown.includes(word) : text.includes(word),
  );
}

/** True when a text holds a word or phrase as such, whatever the case and accents. */
export function holdsPhrase(text: string, phrase: string): boolean {
  const words = wordsOf(phrase);
  return words.length > 0 && ` ${wordsOf(text).join(" ")} `.includes(` ${words.join(" ")} `);
}

function wordsOf(text: string): string[] {
  const plain = text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  return plain.split(/[^\p{L}\p{N}]+/u).filter((word) => word !== "");
}
