import { standInsFor, type Food, type Part } from "#lib/catalog/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import type { ChildProfile } from "../child.ts";
import { hardFilter } from "../is-allowed.ts";
import type { SchoolRule } from "../school-rule.ts";

/**
 * Foods that can take the place of one that is out, at most `most`: they play the same part, none of
 * the children's avoidances or the rules of the day speaks against them, and those that carry a motif
 * of the theme come first. None of them is thereby cleared: read the labels.
 */
export function findStandIns(
  out: { readonly food: Food; readonly part: Part },
  foods: readonly Food[],
  ground: {
    readonly children: readonly ChildProfile[];
    readonly rules: readonly SchoolRule[];
    readonly day: Day;
    readonly themeMotifs: readonly string[];
  },
  most: number,
): Food[] {
  const isAllowed = hardFilter(ground.children, ground.rules, ground.day);
  const fits = ({ motifs }: Food): number =>
    motifs.filter((motif) => ground.themeMotifs.includes(motif)).length;
  return standInsFor(out.food, foods, out.part)
    .map(({ food }) => food)
    .filter(isAllowed)
    .map((food, rank) => ({ food, rank }))
    .sort((one, other) => fits(other.food) - fits(one.food) || one.rank - other.rank)
    .slice(0, most)
    .map(({ food }) => food);
}
