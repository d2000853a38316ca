import { hierarchy, treemap, treemapSquarify } from "d3-hierarchy";

export type TrayPlace = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};

/** The drawing's own units, the handles of the tin included. */
export const TRAY_VIEW = { x: -5, y: 0, width: 182, height: 130 } as const;
const INSIDE = { left: 9, top: 9, width: 154, height: 110 };
const GAP = 5;
/** No compartment is drawn smaller than this share: a pinch of salt must stay readable. */
const SHARE_MIN = 0.12;

/**
 * Places of the compartments in a tin of 172 × 128 units, areas following the weights
 * (squarified treemap: Bruls, Huizing & van Wijk 2000). One place per weight, in the given order.
 */
export function layTray(weights: readonly number[]): TrayPlace[] {
  if (weights.length === 0) return [];
  const total = weights.reduce((sum, weight) => sum + Math.max(weight, 0), 0) || 1;
  const leaves = weights.map((weight, index) => ({
    index,
    share: Math.max(weight / total, SHARE_MIN),
  }));
  type Node = {
    readonly index: number;
    readonly share: number;
    readonly children?: readonly Node[];
  };
  const root: Node = { index: -1, share: 0, children: leaves };
  const laid = treemap<Node>()
    .tile(treemapSquarify.ratio(1.2))
    .size([INSIDE.width, INSIDE.height])
    .paddingInner(GAP)(
    hierarchy<Node>(root, (node) => node.children)
      .sum((node) => node.share)
      .sort((a, b) => (b.value ?? 0) - (a.value ?? 0) || a.data.index - b.data.index),
  );
  const places: TrayPlace[] = [];
  for (const leaf of laid.leaves()) {
    places[leaf.data.index] = {
      x: INSIDE.left + leaf.x0,
      y: INSIDE.top + leaf.y0,
      width: leaf.x1 - leaf.x0,
      height: leaf.y1 - leaf.y0,
    };
  }
  return places;
}

/** Which compartment a point of the screen is in, by its place in the list; −1 for none. */
export function compartmentAt(
  point: { readonly clientX: number; readonly clientY: number },
  drawing: { readonly left: number; readonly top: number; readonly width: number },
  weights: readonly number[],
): number {
  const scale = TRAY_VIEW.width / drawing.width;
  const x = TRAY_VIEW.x + (point.clientX - drawing.left) * scale;
  const y = TRAY_VIEW.y + (point.clientY - drawing.top) * scale;
  return layTray(weights).findIndex(
    (place) =>
      x >= place.x && x <= place.x + place.width && y >= place.y && y <= place.y + place.height,
  );
}

const WIDTH_PER_LETTER = 0.56;

export type TrayLabel = {
  readonly lines: readonly string[];
  readonly size: number;
  readonly upright: boolean;
};

/** How a name is broken and sized to fit its compartment; upright when the place is narrow and tall. */
export function fitLabel(name: string, place: TrayPlace): TrayLabel {
  // A long name may also break after its hyphen.
  const words = name.split(/\s+|(?<=[a-z]-)(?=[a-z]{3})/);
  const candidates: TrayLabel[] = [];
  for (const upright of [false, true]) {
    const [width, height] = upright ? [place.height, place.width] : [place.width, place.height];
    for (let count = 1; count <= Math.min(3, words.length); count += 1) {
      const lines = breakInto(words, count);
      const longest = Math.max(...lines.map((line) => line.length));
      const size = Math.min(
        11.5,
        (width - 6) / (longest * WIDTH_PER_LETTER),
        (height - 4) / (count * 1.12),
      );
      candidates.push({ lines, size: upright ? size * 0.92 : size, upright });
    }
  }
  const best = candidates.reduce((held, next) => (next.size > held.size + 0.05 ? next : held));
  const size = upSize(best);
  return { ...best, size };
}

function upSize(label: TrayLabel): number {
  const size = label.upright ? label.size / 0.92 : label.size;
  return Math.max(6, Math.round(size * 10) / 10);
}

/** Words in a number of lines whose longest is as short as can be. */
function breakInto(words: readonly string[], count: number): string[] {
  if (count === 1) return [joined(words)];
  let best: string[] = [joined(words)];
  for (let cut = 1; cut <= words.length - (count - 1); cut += 1) {
    const lines = [joined(words.slice(0, cut)), ...breakInto(words.slice(cut), count - 1)];
    const longest = (of: readonly string[]): number => Math.max(...of.map((line) => line.length));
    if (best.length === 1 || longest(lines) < longest(best)) best = lines;
  }
  return best;
}

/** Words on one line; what was broken at its hyphen closes up again. */
function joined(words: readonly string[]): string {
  return words.join(" ").replaceAll("- ", "-");
}
