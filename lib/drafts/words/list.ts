/** Words joined with commas and a last "and"; a comma goes before it where a word holds an "and" of its own. */
export function listOf(words: readonly string[], last = "and"): string {
  if (words.length < 2) return words[0] ?? "";
  const head = words.slice(0, -1);
  const tail = words.at(-1) ?? "";
  const comma = words.some((word) => /\sand\s|,/u.test(word)) ? "," : "";
  return `${head.join(", ")}${comma} ${last} ${tail}`;
}
