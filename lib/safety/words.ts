const LIST = new Intl.ListFormat("en", { type: "conjunction" });

/** Names joined with commas and a last "and", each once. */
export function listOf(names: readonly string[]): string {
  return LIST.format([...new Set(names)]);
}

/** A sentence's first letter as a capital. */
export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The verb for one name or several: "holds", "hold". */
export function verb(names: readonly string[], one: string, several: string): string {
  return new Set(names).size === 1 ? one : several;
}
