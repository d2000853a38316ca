/** Parts: what a food does in a lunch, and which others could do it. */
export { likelyPart } from "./likely-part.ts";
export { standInsFor, type StandIn } from "./stand-ins.ts";
