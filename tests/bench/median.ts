/** The value in the middle, the upper of two; 0 of none. */
export function median(values: readonly number[]): number {
  return [...values].sort((one, other) => one - other)[values.length >> 1] ?? 0;
}
