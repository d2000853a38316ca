/** An estimate as a dot on a bar: the longer the bar, the less is known. All three are shares 0–1. */
export function EstimateBar({
  mean,
  low,
  high,
  label,
}: {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
  readonly label: string;
}) {
  const across = (share: number): number => 2 + share * 96;
  return (
    <svg viewBox="0 0 100 10" width="84" height="9" role="img" aria-label={label}>
      <path d="M2 5h96" stroke="var(--line-strong)" strokeWidth="1.4" strokeDasharray="1 3" />
      <path
        d={`M${across(low)} 5H${across(high)}`}
        stroke="var(--ink-2)"
        strokeWidth="3"
        strokeLinecap="round"
      />
      <circle
        cx={across(mean)}
        cy="5"
        r="4.4"
        fill="var(--ink)"
        stroke="var(--sheet)"
        strokeWidth="1.2"
      />
    </svg>
  );
}
