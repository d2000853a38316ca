import type { Colour, Pattern } from "#lib/catalog/index.ts";
import { TINTS } from "./food-tint.ts";

/** A food as one small cup of the tin; a picture beside its name. */
export function FoodCup({
  colour,
  pattern,
}: {
  readonly colour: Colour;
  readonly pattern: Pattern;
}) {
  const box = { x: 2, y: 2, width: 44, height: 34, rx: 10 };
  return (
    <svg className="tray cup-icon" viewBox="0 0 48 38" aria-hidden="true">
      <rect {...box} fill={TINTS[colour].fill} />
      <rect {...box} fill={`url(#food-${pattern})`} />
      <rect {...box} className="cup-rim" />
    </svg>
  );
}
