/** What stood in the way, read out at once; nothing while nothing did. */
export function ProblemLine({ problem }: { readonly problem: string | null | undefined }) {
  if (!problem) return null;
  return (
    <p className="rule-error" role="alert">
      {problem}
    </p>
  );
}
