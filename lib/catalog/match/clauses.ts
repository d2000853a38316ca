/** A stretch of a phrase between commas; what stands after "with" says little of what the food is. */
export type Clause = { readonly text: string; readonly isAside: boolean };

/** Turns of USDA descriptions and recipe lines that say nothing of which food it is. */
const EMPTY_TURNS: readonly RegExp[] = [
  /\bns as to\b.*$/,
  /\b(?:without|excluding|no)\b.*$/,
  /\b(?:made|prepared|cooked|packed|served|diluted|coated|cooked) (?:with|from|of|in)\b.*$/,
  /\b(?:canned|packed|pickled)? ?in (?:oil|water|brine|vinegar|juice|syrup|its own juice|pod|skin|shell)\b.*$/,
  /\b(?:extra |very )?(?:light|heavy)? ?(?:juice|syrup|water|vacuum|regular|tray) pack(?:ed)?\b/,
  /\bsolids and (?:liquids?|bones?)(?: and liquids?)?\b|\bdrained solids\b.*$|\bsolids with bone\b.*$/,
  /\b(?:im)?mature (?:seeds?)?\b/,
  /\bbroilers or fryers\b|\ball (?:classes|grades|varieties|types|areas|commercial)\b/,
  /\b(?:dry|dehydrated) mix\b|\brefrigerated dough\b|\bfrom concentrate\b|\bfrozen concentrate\b/,
  /\bready[- ]to[- ][a-z]+(?: or[- ][a-z]+)?\b/,
  /\b(?:cut|sliced|broken|torn|halved|quartered) (?:in|into|from|off|up|to|lengthwise)\b.*$/,
  /\b(?:to taste|if desired|for (?:dusting|garnish|serving|frying|the)\b.*$)/,
  /\bat room temperature\b|\b(?:rinsed|washed|thoroughly|patted?)\b.*\bdr(?:y|ied)\b/,
  /\bsuch as\b.*$|\blike\b.*$|\betc\b/,
  /\b(?:cooked|edible) (?:dry|moist) heat\b|\b(?:dry|moist) heat\b/,
  /\bpart[- ]skim(?: milk)?\b|\b(?:low|reduced|lower|higher|full)[- ]?(?:fat|sodium|calorie|moisture|sugar)(?: milk)?\b/,
  /\bflavors other than fruit\b|\bnot a blend\b|\bfreshly squeezed\b/,
  /\b\d+ ?(?:%|percent)(?: (?:juice|milkfat|lean meat|fat|lean|natural))?/g,
  /\b(?:with )?added\b.*$/,
];
/** Clauses about what was taken away: "stems removed". */
const TAKEN_AWAY = /\b(?:removed|discarded|reserved|divided|separable|trimmed to|meat only)\b/;

/**
 * Takes a phrase apart at its commas, lower-cased and without accents, brackets, amounts in words
 * or empty turns ("without salt"). The first clause is what the phrase is about.
 */
export function clausesOf(phrase: string): Clause[] {
  const plain = phrase
    .toLowerCase()
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .replaceAll(/[’'`]s\b/g, "s")
    .replaceAll(/\([^()]*\)/g, " ")
    .replaceAll(/\bn['’]?\b/g, " and ")
    .replaceAll(/[’'`]/g, "")
    .replaceAll("&", " and ")
    .replaceAll("/", " or ");
  const clauses: Clause[] = [];
  const parts = plain.split(/[,;:()]/);
  // "Jams, jellies, and preserves" lists others beside the first.
  const isList = parts.slice(1).some((part) => /^\s*(?:and|or)\s/.test(part));
  for (const [index, part] of parts.entries()) {
    if (index > 0 && (/^\s*\d/.test(part) || TAKEN_AWAY.test(part))) continue;
    const [main = "", ...asides] = withoutEmptyTurns(part).split(/\bwith\b|\btopped\b/);
    if (main.trim() !== "") clauses.push({ text: main, isAside: isList && index > 0 });
    for (const aside of asides) clauses.push({ text: aside, isAside: true });
  }
  return clauses;
}

/** The phrase with its brackets opened: "Grapes (raisins), dried" as "Grapes or raisins, dried". */
export function openBrackets(phrase: string): string {
  return phrase.replaceAll(
    /\(([^()]*)\)/g,
    (_, inner: string) => ` or ${inner.replaceAll(",", " or ")} `,
  );
}

function withoutEmptyTurns(text: string): string {
  return EMPTY_TURNS.reduce((rest, turn) => rest.replace(turn, " "), text);
}
