/** How good a proposal is proven to be, in plain words. */
export function proofWords({
  broken,
  gap,
}: {
  readonly broken: number;
  readonly gap: number | null;
}): string {
  if (broken > 0) return "This proposal still breaks a rule. It cannot be taken like this.";
  if (gap === null)
    return "It keeps every rule. How much better another could be is not known yet.";
  const percent = (100 * gap).toFixed(1);
  return percent === "0.0"
    ? "It keeps every rule, and no plan with these themes can be better."
    : `It keeps every rule, and no plan with these themes can be more than ${percent} % better.`;
}
