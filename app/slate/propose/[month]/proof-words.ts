/** How good a proposal is proven to be, in plain words. */
export function proofWords({
  broken,
  gap,
  gapAll,
}: {
  readonly broken: number;
  readonly gap: number | null;
  readonly gapAll: number | null;
}): string {
  if (broken > 0) return "This proposal still breaks a rule. It cannot be taken like this.";
  if (gap === null && gapAll === null)
    return "It keeps every rule. How much better another could be is not known yet.";
  const chosen = gap === null ? "" : `${limitWords("no plan with these themes", gap)}`;
  const all = gapAll === null ? "" : `${limitWords("no plan with any themes", gapAll)}`;
  return `It keeps every rule, and ${[chosen, all].filter((words) => words !== "").join("; ")}.`;
}

function limitWords(plans: string, gap: number): string {
  const percent = (100 * gap).toFixed(1);
  return percent === "0.0"
    ? `${plans} can be better`
    : `${plans} can be more than ${percent} % better`;
}
