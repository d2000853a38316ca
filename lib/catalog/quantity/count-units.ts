import pluralize from "pluralize";

/** The unit of a thing counted without any: "2 clementines" is two of `EACH`. */
export const EACH = "each";
/** The unit of a child's usual serving, `servingGrams` of the food. */
export const SERVING = "serving";

/** Words that count a food (FNDDS portion descriptions, USDA 2021-2023, and kitchen usage). */
const COUNT_UNITS = new Set(
  `bag ball bar bottle bowl box bunch cake can carton chunk clove container cube dash drop ear floret
  floweret fruit half handful head jar kernel leaf loaf pack package packet pat piece pinch pod pouch
  punnet quarter ring round scoop section segment sheet slice spear sprig square stalk stick strip
  tin triangle tub tube wedge small medium large`.split(/\s+/),
);
const SAME_UNIT: Record<string, string> = {
  portion: SERVING,
  pkg: "package",
  pkt: "packet",
  leave: "leaf",
  pc: "piece",
  "medium-size": "medium",
  "medium-sized": "medium",
  "small-sized": "small",
  "large-sized": "large",
  sm: "small",
  med: "medium",
  lg: "large",
};

/** The counted unit a single word stands for ("slices" is "slice"), or undefined. */
export function countUnitOf(word: string): string | undefined {
  const plain = word.toLowerCase().replace(/\.$/, "");
  if (plain === EACH || plain === SERVING || plain === "servings") return pluralize.singular(plain);
  const single = SAME_UNIT[plain] ?? pluralize.singular(plain);
  const unit = SAME_UNIT[single] ?? single;
  return COUNT_UNITS.has(unit) || unit === SERVING ? unit : undefined;
}
