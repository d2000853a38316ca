/** A child at the verdict table, with the faces of its age. */
export type Person = {
  readonly id: string;
  readonly name: string;
  readonly faces: readonly { readonly value: number; readonly word: string }[];
};

/** Words of the quarter scale, by quarters eaten. */
export const EATEN = ["none", "¼", "½", "¾", "all"] as const;

/** "½ eaten, love it": a verdict in short; empty when nothing was said. */
export function verdictWords(
  { eaten, face }: { readonly eaten: number | null; readonly face: number | null },
  { faces }: Person,
): string {
  const amount = eaten === null ? "" : `${EATEN[eaten] ?? ""} eaten`;
  const nearest = faces.toSorted(
    (one, other) => Math.abs(one.value - (face ?? 0)) - Math.abs(other.value - (face ?? 0)),
  )[0];
  const word = face === null ? "" : (nearest?.word.toLowerCase() ?? "");
  return [amount, word].filter((part) => part !== "").join(", ");
}
