import type { Colour, Pattern } from "#lib/catalog/index.ts";
import { DRAWINGS, TINTS } from "./food-tint.ts";
import { fitLabel, layTray, type TrayPlace } from "./tray-layout.ts";

export type Compartment = {
  readonly key: string;
  readonly name: string;
  /** Weight of the portion; areas follow it. */
  readonly grams: number;
  readonly colour: Colour;
  readonly pattern: Pattern;
  /** Quarters eaten 0–4; left out before the verdict. */
  readonly eaten?: number | undefined;
  /** Stitched round (seen before), struck round (broken rule), or chosen now. */
  readonly mark?: "seen" | "broken" | "now" | undefined;
};

const EATEN = ["none eaten", "¼ eaten", "½ eaten", "¾ eaten", "all eaten"] as const;

/** A lunch drawn as a tin of compartments; read out as a list of foods with their shares. */
export function Tray({
  compartments,
  empty = "Nothing in the tin yet",
}: {
  readonly compartments: readonly Compartment[];
  readonly empty?: string;
}) {
  const places = layTray(compartments.map(({ grams }) => grams));
  const tints = new Map(compartments.map((one) => [tintId(one), one]));
  return (
    <svg
      className="tray"
      viewBox="-5 0 182 130"
      role="img"
      aria-label={readOut(compartments, empty)}
    >
      <defs>
        {[...tints].map(([id, one]) => (
          <FoodPattern key={id} id={id} compartment={one} />
        ))}
      </defs>
      <rect className="latch" x="-4" y="51" width="10" height="26" rx="4" />
      <rect className="latch" x="166" y="51" width="10" height="26" rx="4" />
      <rect className="body" x="1.3" y="1.3" width="169.4" height="125.4" rx="19" />
      <rect className="shine" x="4" y="4" width="164" height="120" rx="16.5" />
      {compartments.length === 0 && (
        <rect className="ghost" x="14" y="14" width="144" height="100" rx="12" />
      )}
      {compartments.map((one, index) => {
        const place = places[index];
        return place && <Cell key={one.key} compartment={one} place={place} />;
      })}
    </svg>
  );
}

function Cell({
  compartment,
  place,
}: {
  readonly compartment: Compartment;
  readonly place: TrayPlace;
}) {
  const { fill, line } = TINTS[compartment.colour];
  const box = { x: place.x, y: place.y, width: place.width, height: place.height };
  const radius = Math.min(12, place.height / 3, place.width / 3);
  const left = compartment.eaten === undefined ? 1 : 1 - compartment.eaten / 4;
  const label = fitLabel(labelOf(compartment), place);
  const middleX = place.x + place.width / 2;
  const middleY = place.y + place.height / 2;
  return (
    <g>
      {left < 1 && <rect className="cup" {...box} rx={radius} />}
      {left > 0 && left < 1 ? (
        <path d={surface(place, left)} fill={`url(#${tintId(compartment)})`} />
      ) : (
        left === 1 && <rect {...box} rx={radius} fill={`url(#${tintId(compartment)})`} />
      )}
      {left === 0 && <Crumbs place={place} colour={line} />}
      <rect {...box} rx={radius} fill="none" stroke={line} strokeOpacity={0.75} strokeWidth={1.3} />
      <text
        fontSize={label.size}
        stroke={left === 1 ? fill : "#fdfaf2"}
        strokeWidth={4}
        transform={label.upright ? `rotate(-90 ${middleX} ${middleY})` : undefined}
      >
        {label.lines.map((text, row) => (
          <tspan
            key={text}
            x={middleX}
            y={middleY + label.size * (0.35 + (row - (label.lines.length - 1) / 2) * 1.12)}
          >
            {text}
          </tspan>
        ))}
      </text>
      {compartment.mark === "seen" && (
        <>
          <rect className="seen0" {...box} rx={radius} />
          <rect className="seen" {...box} rx={radius} />
        </>
      )}
      {compartment.mark === "broken" && <rect className="bad" {...box} rx={radius} />}
      {compartment.mark === "now" && <rect className="now" {...box} rx={radius} />}
    </g>
  );
}

/** What is left, with a wavy surface like something spooned out. */
function surface({ x, y, width, height }: TrayPlace, left: number): string {
  const top = y + height * (1 - left);
  const bend = Math.min(4, height * 0.06);
  return `M${x} ${top}q${width / 4} ${-bend} ${width / 2} 0t${width / 2} 0V${y + height - 6}q0 6-6 6H${x + 6}q-6 0-6-6z`;
}

function Crumbs({ place, colour }: { readonly place: TrayPlace; readonly colour: string }) {
  const spots = [
    [0.25, 0.8, 1.6],
    [0.36, 0.88, 1.1],
    [0.72, 0.82, 1.4],
  ] as const;
  return spots.map(([across, down, radius]) => (
    <circle
      key={across}
      cx={place.x + place.width * across}
      cy={place.y + place.height * down}
      r={radius}
      fill={colour}
    />
  ));
}

function FoodPattern({
  id,
  compartment,
}: {
  readonly id: string;
  readonly compartment: Compartment;
}) {
  const { fill, line } = TINTS[compartment.colour];
  const { width, height, path } = DRAWINGS[compartment.pattern];
  return (
    <pattern
      id={id}
      width={width}
      height={height}
      patternUnits="userSpaceOnUse"
      patternTransform="rotate(-8)"
    >
      <rect width={width} height={height} fill={fill} />
      <path
        d={path}
        fill="none"
        stroke={line}
        strokeOpacity={0.42}
        strokeWidth={1.5}
        strokeLinecap="round"
        strokeLinejoin="round"
      />
    </pattern>
  );
}

function tintId({ colour, pattern }: Compartment): string {
  return `f-${colour}-${pattern}`;
}

function labelOf({ name, eaten }: Compartment): string {
  return eaten === undefined ? name : `${name} ${EATEN[eaten] ?? ""}`;
}

function readOut(compartments: readonly Compartment[], empty: string): string {
  if (compartments.length === 0) return `Tray: ${empty}`;
  const total = compartments.reduce((sum, { grams }) => sum + grams, 0) || 1;
  const shares = compartments.map(
    (one) => `${labelOf(one)} ${Math.round((one.grams / total) * 100)} %`,
  );
  return `Tray: ${shares.join(", ")}`;
}
