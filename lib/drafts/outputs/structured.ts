import type { Day } from "#lib/calendar/index.ts";
import type { Chapter } from "../timing/chapters.ts";

/** What an episode’s page says of itself to machines. */
export type EpisodePublished = {
  readonly name: string;
  readonly description: string;
  readonly url: string;
  readonly publishedOn: Day | null;
  readonly totalSeconds: number;
  readonly chapters: readonly Chapter[];
};

type Node = Readonly<Record<string, unknown>>;

/** schema.org VideoObject with a Clip for each chapter; offsets are seconds from the start. */
export function videoObject(episode: EpisodePublished): Node {
  const { chapters, totalSeconds, url, publishedOn } = episode;
  return {
    "@context": "https://schema.org",
    "@type": "VideoObject",
    name: episode.name,
    description: episode.description,
    ...(url === "" ? {} : { url }),
    ...(publishedOn === null ? {} : { uploadDate: publishedOn }),
    duration: isoDuration(totalSeconds),
    hasPart: chapters.map(({ seconds, title }, index) => ({
      "@type": "Clip",
      name: title,
      startOffset: Math.round(seconds),
      endOffset: Math.round(chapters[index + 1]?.seconds ?? totalSeconds),
      ...(url === "" ? {} : { url: withTime(url, seconds) }),
    })),
  };
}

/** schema.org ItemList of the week’s lunches, in their order. */
export function weekList(
  name: string,
  lunches: readonly { readonly name: string; readonly description: string }[],
): Node {
  return {
    "@context": "https://schema.org",
    "@type": "ItemList",
    name,
    numberOfItems: lunches.length,
    itemListOrder: "https://schema.org/ItemListOrderAscending",
    itemListElement: lunches.map((lunch, index) => ({
      "@type": "ListItem",
      position: index + 1,
      name: lunch.name,
      description: lunch.description,
    })),
  };
}

/** A recipe of the house, as it stands in the Larder. */
export type HouseRecipe = {
  readonly name: string;
  /** One a line, the amount first. */
  readonly ingredients: readonly string[];
  /** "16 flatbreads"; null where nobody said. */
  readonly makes: string | null;
  readonly steps: readonly {
    readonly name: string;
    readonly minutes: number;
    readonly handsOn: boolean;
  }[];
};

/**
 * schema.org Recipe: hands-on minutes are preparation, the others cooking. What nobody typed is left
 * out, and nothing is said of diets: the ingredients speak for themselves.
 */
export function recipe({ name, ingredients, makes, steps }: HouseRecipe, author: string): Node {
  const minutes = (handsOn: boolean): number =>
    steps.filter((step) => step.handsOn === handsOn).reduce((sum, step) => sum + step.minutes, 0);
  return {
    "@context": "https://schema.org",
    "@type": "Recipe",
    name,
    ...(author === "" ? {} : { author: { "@type": "Organization", name: author } }),
    ...(makes === null ? {} : { recipeYield: makes }),
    ...(ingredients.length === 0 ? {} : { recipeIngredient: ingredients }),
    ...(steps.length === 0
      ? {}
      : {
          ...(minutes(true) > 0 ? { prepTime: isoDuration(minutes(true) * 60) } : {}),
          ...(minutes(false) > 0 ? { cookTime: isoDuration(minutes(false) * 60) } : {}),
          totalTime: isoDuration((minutes(true) + minutes(false)) * 60),
          recipeInstructions: steps.map((step) => ({ "@type": "HowToStep", text: step.name })),
        }),
  };
}

/** ISO 8601 duration: ten minutes are PT10M (P10M would be ten months). */
export function isoDuration(seconds: number): string {
  const whole = Math.max(0, Math.round(seconds));
  const [hours, minutes, rest] = [
    Math.floor(whole / 3600),
    Math.floor((whole % 3600) / 60),
    whole % 60,
  ];
  const text = `${hours > 0 ? `${hours}H` : ""}${minutes > 0 ? `${minutes}M` : ""}${rest > 0 ? `${rest}S` : ""}`;
  return `PT${text === "" ? "0S" : text}`;
}

/** The address at a moment of the video, as W3C Media Fragments has it (#t=seconds). */
function withTime(url: string, seconds: number): string {
  return `${url.replace(/#.*$/u, "")}#t=${Math.round(seconds)}`;
}
