/** A number as typed, comma or point; NaN when it is none, so that the schema says so. */
export function numberTyped(text: string): number {
  const plain = text.trim().replace(",", ".");
  return plain === "" ? Number.NaN : Number(plain);
}
