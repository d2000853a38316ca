import type { Colour, Pattern } from "#lib/catalog/index.ts";
import { TINTS } from "./food-tint.ts";
import { fitLabel, layTray, TRAY_VIEW, type TrayPlace } from "./tray-layout.ts";

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

const VIEW = `${TRAY_VIEW.x} ${TRAY_VIEW.y} ${TRAY_VIEW.width} ${TRAY_VIEW.height}`;
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
  return (
    <svg className="tray" viewBox={VIEW} role="img" aria-label={readOut(compartments, empty)}>
      <use href="#tin" />
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

const MARKS = { seen: ["seen0", "seen"], broken: ["bad"], now: ["now"] } as const;

function Cell({
  compartment,
  place,
}: {
  readonly compartment: Compartment;
  readonly place: TrayPlace;
}) {
  const { colour, pattern, mark } = compartment;
  const { fill, line } = TINTS[colour];
  const [x, y, width, height] = [place.x, place.y, place.width, place.height].map(tenths);
  const rx = tenths(Math.min(12, place.height / 3, place.width / 3));
  const box = { x, y, width, height, rx };
  const left = compartment.eaten === undefined ? 1 : 1 - compartment.eaten / 4;
  const isFull = left === 1;
  return (
    <>
      <rect {...box} fill={isFull ? fill : CUP} stroke={line} />
      {isFull && <rect {...box} fill={`url(#food-${pattern})`} />}
      {left > 0 && !isFull && (
        <>
          <path d={surface(place, left)} fill={fill} />
          <path d={surface(place, left)} fill={`url(#food-${pattern})`} />
        </>
      )}
      {left === 0 && <Crumbs place={place} colour={line} />}
      <Label name={labelOf(compartment)} place={place} halo={isFull ? fill : CUP} />
      {mark && MARKS[mark].map((name) => <rect key={name} className={name} {...box} />)}
    </>
  );
}

/** The food's name, broken and sized to fit, with a halo of the ground it stands on. */
function Label({
  name,
  place,
  halo,
}: {
  readonly name: string;
  readonly place: TrayPlace;
  readonly halo: string;
}) {
  const { lines, size, upright } = fitLabel(name, place);
  const x = tenths(place.x + place.width / 2);
  const y = tenths(place.y + place.height / 2);
  const rowY = (row: number): number =>
    tenths(y + size * (0.35 + (row - (lines.length - 1) / 2) * 1.12));
  return (
    <text
      x={x}
      y={rowY(0)}
      fontSize={size}
      stroke={halo}
      transform={upright ? `rotate(-90 ${x} ${y})` : undefined}
    >
      {lines.length === 1
        ? lines[0]
        : lines.map((text, row) => (
            <tspan key={text} x={x} y={rowY(row)}>
              {text}
            </tspan>
          ))}
    </text>
  );
}

/** Of the inside of an emptied cup. */
const CUP = "#fdfaf2";

/** One digit after the point is a fifth of a pixel: enough, and half as long. */
function tenths(length: number): number {
  return Math.round(length * 10) / 10;
}

/** What is left, with a wavy surface like something spooned out. */
function surface({ x, y, width, height }: TrayPlace, left: number): string {
  const top = y + height * (1 - left);
  const bend = Math.min(4, height * 0.06);
  const [quarter, half] = [tenths(width / 4), tenths(width / 2)];
  return `M${tenths(x)} ${tenths(top)}q${quarter} ${tenths(-bend)} ${half} 0t${half} 0V${tenths(y + height - 6)}q0 6-6 6H${tenths(x + 6)}q-6 0-6-6z`;
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
      cx={tenths(place.x + place.width * across)}
      cy={tenths(place.y + place.height * down)}
      r={radius}
      fill={colour}
    />
  ));
}

function labelOf({ name, eaten }: Compartment): string {
  return eaten === undefined ? name : `${name} ${EATEN[eaten] ?? ""}`.trim();
}

function readOut(compartments: readonly Compartment[], empty: string): string {
  if (compartments.length === 0) return `Tray: ${empty}`;
  const total = compartments.reduce((sum, { grams }) => sum + grams, 0) || 1;
  const shares = compartments.map(
    (one) => `${labelOf(one)} ${Math.round((one.grams / total) * 100)} %`,
  );
  return `Tray: ${shares.join(", ")}`;
}
