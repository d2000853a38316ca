import type { Trick } from "../food.ts";
import type { NamedFood } from "../match/prepare-foods.ts";
import { singularOf } from "../match/terms.ts";

export type NamedTrick = Pick<Trick, "id" | "name" | "kind">;

export type FoundTricks = {
  readonly tricks: readonly NamedTrick[];
  /** The text without the words of tricks, cuts excepted. */
  readonly rest: string;
  /** The text without the words of cuts either. */
  readonly bare: string;
};

/**
 * The tricks a phrase names. A cut by its own word ("ribbons"), a cutter by its shape ("star-shaped",
 * "cut into stars", "star cutter"), anything else by its full name ("leaf picks"). A cut may be part
 * of the food's own name ("celery sticks"), so there is a rest with and one without it.
 */
export function findTricks(phrase: string, tricks: readonly NamedTrick[]): FoundTricks {
  let rest = phrase;
  let bare = phrase;
  const found: NamedTrick[] = [];
  for (const trick of [...tricks].sort((left, right) => right.name.length - left.name.length)) {
    const pattern = patternOf(trick);
    if (!pattern?.test(bare)) continue;
    found.push(trick);
    bare = bare.replace(pattern, " ");
    if (trick.kind !== "cut") rest = rest.replace(pattern, " ");
  }
  return { tricks: found, rest: tidy(rest), bare: tidy(bare) };
}

/** True when a food's name already says the cut: "sticks", of fish sticks. */
export function isInName(trick: NamedTrick, food: NamedFood): boolean {
  const pattern = trick.kind === "cut" ? patternOf(trick) : undefined;
  return [food.name, ...(food.aliases ?? [])].some((name) => pattern?.test(name) ?? false);
}

function tidy(text: string): string {
  return text.replaceAll(/\s+/g, " ").trim();
}

function patternOf(trick: NamedTrick): RegExp | undefined {
  const words = trick.name.toLowerCase().match(/[\p{L}]+/gu) ?? [];
  if (words.length === 0) return undefined;
  const singular = words.map((word) => `${singularOf(word)}(?:s|es)?`).join("[\\s-]+");
  if (trick.kind !== "cutter")
    return new RegExp(`\\b(?:in |into |with )?(?:a )?${singular}(?![\\p{L}])`, "iu");
  const shape = words
    .filter((word) => !/^cutters?$/.test(word))
    .map(singularOf)
    .join("[\\s-]+");
  const ways = [
    `${shape}[\\s-]+(?:shaped?|cutters?|cut[\\s-]?outs?)(?:s)?`,
    `(?:cut )?(?:in|into|as) (?:little |small |tiny )?${shape}(?:s|es)?`,
  ];
  return new RegExp(`\\b(?:${ways.join("|")})(?![\\p{L}])`, "iu");
}
