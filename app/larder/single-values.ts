/** An address's query with one value a name; a name without a value is left out. */
export function singleValues(
  query: Readonly<Record<string, string | string[] | undefined>>,
): Record<string, string | undefined> {
  return Object.fromEntries(
    Object.entries(query).map(([key, value]) => [
      key,
      (Array.isArray(value) ? value[0] : value) || undefined,
    ]),
  );
}
