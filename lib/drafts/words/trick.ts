import pluralize from "pluralize";
import { withArticle, isMany } from "./noun.ts";
import { tidy } from "./tidy.ts";

/** How the cuts of the reference catalogue are said after a food. */
const CUTS: Readonly<Record<string, string>> = {
  sticks: "in sticks",
  ribbons: "in ribbons",
  "halved-coins": "in halved coins",
  "quarters-lengthwise": "in long quarters",
  "thin-matchsticks": "in matchsticks",
  "wavy-cut": "with a wavy cut",
  dice: "in dice",
  triangles: "in triangles",
  "fingers-and-soldiers": "in soldiers",
  "pinwheel-roll": "rolled into pinwheels",
  "roll-up": "rolled up",
  checkerboard: "in a checkerboard",
  "fan-of-slices": "in a fan",
  "zigzag-halves": "in zigzag halves",
  "balls-with-a-scoop": "scooped into balls",
  spiral: "in a spiral",
  "envelope-fold": "folded like an envelope",
  "crinkled-accordion": "folded like an accordion",
};

/** What follows a food for its presentation: "cut into stars", "on flag picks", "in paper cups". */
export function trickPhrase(trick: {
  readonly id: string;
  readonly name: string;
  readonly kind: string;
}): string {
  const name = tidy(trick.name);
  const one = isMany(name) ? name : withArticle(name);
  switch (trick.kind) {
    case "cut":
      return CUTS[trick.id] ?? (isMany(name) ? `in ${name}` : `with ${one}`);
    case "cutter": {
      const shape = /^(.+?)[ -]cutters?$/u.exec(name)?.[1]?.replaceAll("-", " ");
      return shape === undefined ? `cut with ${one}` : `cut into ${pluralize(shape)}`;
    }
    case "pick":
      return `on ${one}`;
    case "container":
      return `in ${one}`;
    default:
      return `with ${one}`;
  }
}
