import type { Colour, Pattern } from "#lib/catalog/index.ts";

/** Paper and line of each colour in the drawn tray; labels on the tints stay above 7:1 in light. */
export const TINTS: Readonly<Record<Colour, { readonly fill: string; readonly line: string }>> = {
  red: { fill: "#f3b0b3", line: "#a23642" },
  orange: { fill: "#f7c08c", line: "#bb5f20" },
  yellow: { fill: "#fae38c", line: "#b18614" },
  green: { fill: "#cfe6b5", line: "#4f7f3a" },
  blue: { fill: "#b9c3e6", line: "#3f4d8c" },
  purple: { fill: "#d2bfe4", line: "#654789" },
  pink: { fill: "#efbccb", line: "#8e3459" },
  white: { fill: "#fbf8f0", line: "#b9ae96" },
  cream: { fill: "#f2e1b8", line: "#a08342" },
  brown: { fill: "#d9b890", line: "#7a5230" },
  black: { fill: "#bcc3c4", line: "#3a454b" },
};

/** The repeating drawing of each pattern: its tile and its strokes. */
export const DRAWINGS: Readonly<
  Record<Pattern, { readonly width: number; readonly height: number; readonly path: string }>
> = {
  discs: {
    width: 26,
    height: 26,
    path: "M13 4.5a8.5 8.5 0 1 0 .01 0M13 9.5v1M16 12.5l-1 .4M10 12.5l1 .4M11.4 16l.6-.9M14.7 16l-.7-.9",
  },
  sticks: {
    width: 16,
    height: 30,
    path: "M6 3h1a3 3 0 0 1 3 3v18a3 3 0 0 1-3 3h-1a3 3 0 0 1-3-3v-18a3 3 0 0 1 3-3",
  },
  wedges: { width: 30, height: 24, path: "M4 8q11 14 22 0q-11 5-22 0z" },
  dots: { width: 16, height: 16, path: "M8 3a5 5 0 1 0 .01 0M6 6.4q1.4-1.6 3-.8" },
  grains: { width: 20, height: 20, path: "M4 5q4-3 6 0M13 12q3-4 5-1M3 15q3 3 6 0" },
  waves: { width: 34, height: 26, path: "M4 14q6-9 13-1t13-1" },
  leaves: { width: 28, height: 24, path: "M5 17q2-12 17-13q-1 13-17 13q5-7 11-9" },
  shells: { width: 26, height: 24, path: "M4 13a7 7 0 0 1 14 0M7 13a4 4 0 0 1 8 0M4 13q7 4 14 0" },
  squares: {
    width: 16,
    height: 16,
    path: "M4.500 2.500h6q2 0 2 2v6q0 2-2 2h-6q-2 0-2-2v-6q0-2 2-2",
  },
  crumbs: { width: 18, height: 18, path: "M4 4h.1M12 3h3M8 10h2M15 13h.1M3 15h2" },
  rings: {
    width: 34,
    height: 34,
    path: "M17 5a12 12 0 1 0 .01 0M17 14a3 3 0 1 0 .01 0M17 9v2M17 23v2M9 17h2M23 17h2",
  },
  rounds: { width: 20, height: 20, path: "M10 3a7 7 0 1 0 .01 0M8 8l2 2 2-2" },
  speckle: {
    width: 30,
    height: 26,
    path: "M5 8q4-3 8 0q-4 3-8 0M20 19q3-2 6 0q-3 2-6 0M22 6h2M8 20h2",
  },
  yolk: {
    width: 34,
    height: 34,
    path: "M17 5.500a11.500 11.500 0 1 0 .01 0M17 11a6 6 0 1 0 .01 0",
  },
  plain: { width: 40, height: 34, path: "M6 10q10-4 18 0M16 26q10-4 18 0" },
};
