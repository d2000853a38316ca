import { Icon, type IconName } from "./icon.tsx";

const SIGNS = {
  dependable: "check",
  meeting: "half",
  mixed: "wave",
  resting: "moon",
  unmet: "ring",
} as const satisfies Record<string, IconName>;

/** Length of the bar from 0 to 100 %, in the drawing's own units. */
const LENGTH = 80;

/** Where the share eaten may lie, 0–1, and how many tastings tell of it. */
type Estimate = {
  readonly estimate: number;
  readonly low: number;
  readonly high: number;
  readonly tastings: number;
};
type Kind = keyof typeof SIGNS;

/** How a child stands with a food: sign and word, then the estimate. */
export function StandingBar({
  standing,
}: {
  readonly standing: Estimate & { readonly kind: Kind; readonly words: string };
}) {
  const { kind, words } = standing;
  return (
    <>
      <StandingSign kind={kind} words={words} />
      {kind === "unmet" ? (
        <span className="small quiet">no tasting yet</span>
      ) : (
        <EstimateBar {...standing} />
      )}
    </>
  );
}

/** A standing as its sign and words. */
export function StandingSign({ kind, words }: { readonly kind: Kind; readonly words: string }) {
  return (
    <span className="standing">
      <Icon name={SIGNS[kind]} />
      {words}
    </span>
  );
}

/** An estimate as a dot on the bar where it may lie: the longer the bar, the less is known. */
export function EstimateBar({ estimate, low, high, tastings }: Estimate) {
  const at = (share: number): number => Math.round((2 + share * LENGTH) * 10) / 10;
  const percent = (share: number): number => Math.round(share * 100);
  return (
    <svg
      className="standing-bar"
      viewBox="0 0 84 18"
      role="img"
      aria-label={`estimate ${percent(estimate)} %, likely ${percent(low)} to ${percent(high)}, ${tastings} ${tastings === 1 ? "tasting" : "tastings"}`}
    >
      <path className="axis" d={`M2 9h${LENGTH}`} />
      <path className="range" d={`M${at(low)} 9H${at(high)}`} />
      <circle className="dot" cx={at(estimate)} cy="9" r="4.5" />
    </svg>
  );
}
