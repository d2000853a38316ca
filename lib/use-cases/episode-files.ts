import { readIngredients } from "#lib/catalog/index.ts";
import type { readHouseRecipes } from "#lib/db/index.ts";
import {
  chapterLines,
  chaptersVtt,
  recipe,
  toHtml,
  toMarkdown,
  videoObject,
  weekList,
  type Chapter,
} from "#lib/drafts/index.ts";
import type { CopyDeskGround } from "./copy-desk-ground.ts";
import { pieceView, stoppedIn } from "./piece-view.ts";

/** A file an episode is published with. */
export type EpisodeFile = {
  readonly name: string;
  readonly fileName: string;
  readonly type: string;
  readonly text: string;
  /** What holds it back, in words; empty: nothing. */
  readonly open: readonly string[];
  /** Where that is mended. */
  readonly mendHref: string;
};

type Asked = {
  readonly chapters: readonly Chapter[];
  readonly totalSeconds: number;
  readonly recipes: Awaited<ReturnType<typeof readHouseRecipes>>;
};

/** Every file of an episode that holds something, each looked through by the same guards as a text. */
export function episodeFiles(ground: CopyDeskGround, asked: Asked): EpisodeFile[] {
  return [...timedFiles(ground, asked), ...recipeFiles(ground, asked), ...descriptionFiles(ground)]
    .filter(({ text }) => text.trim() !== "")
    .map((file) => ({ ...file, fileName: `episode-${ground.episode.number}${file.fileName}` }));
}

function timedFiles(ground: CopyDeskGround, { chapters, totalSeconds }: Asked): EpisodeFile[] {
  const { episode } = ground;
  const { title: name, facts } = ground.told(0);
  const description = pieceView(ground, "description", null);
  const titles = {
    open: stoppedIn(
      ground,
      chapters.map(({ title }) => title),
    ),
    mendHref: `/copydesk/${episode.weekOf}/files`,
  };
  const video = videoObject({
    ...{ name, description: description.body, url: episode.url },
    ...{ publishedOn: episode.publishedOn, totalSeconds, chapters },
  });
  const packed = facts.flatMap(({ detail, label }) =>
    detail.kind === "packed" && detail.tense === "did"
      ? [{ name: detail.angle || label, description: detail.foods.join(", ") }]
      : [],
  );
  const held = heldBack(ground);
  return [
    {
      ...{ name: "Chapters for the description", fileName: "-chapters.txt", type: "text/plain" },
      ...{ text: chapterLines(chapters), ...titles },
    },
    {
      ...{ name: "Chapters as WebVTT", fileName: "-chapters.vtt", type: "text/vtt" },
      ...{ text: chaptersVtt(chapters, totalSeconds), ...titles },
    },
    {
      ...{ name: "Video with its parts", fileName: "-video.json", type: "application/ld+json" },
      text: json(video),
      ...(held.open.length > 0 ? held : titles),
    },
    {
      ...{ name: "The week’s lunches", fileName: "-list.json", type: "application/ld+json" },
      text: packed.length === 0 ? "" : json(weekList(name, packed)),
      open: stoppedIn(
        ground,
        packed.flatMap((one) => [one.name, one.description]),
      ),
      mendHref: `/slate/week/${episode.weekOf}`,
    },
  ];
}

function recipeFiles(ground: CopyDeskGround, { recipes }: Asked): EpisodeFile[] {
  return recipes.map(({ id, name, ingredients, steps }) => {
    const { lines, makes } = readIngredients(ingredients);
    const told = [name, ...lines, makes ?? "", ...steps.map((step) => step.name)];
    return {
      ...{ name: `Recipe: ${name}`, fileName: `-recipe-${id}.json`, type: "application/ld+json" },
      text: json(recipe({ name, ingredients: lines, makes, steps }, ground.records.seriesName)),
      ...{ open: stoppedIn(ground, told), mendHref: `/larder/${id}` },
    };
  });
}

function descriptionFiles(ground: CopyDeskGround): EpisodeFile[] {
  const { body } = pieceView(ground, "description", null);
  const file = (name: string, fileName: string, type: string, text: string): EpisodeFile => ({
    ...{ name, fileName, type, text, ...heldBack(ground) },
  });
  return [
    file("Description as Markdown", "-description.md", "text/markdown", toMarkdown(body)),
    file("Description as HTML", "-description.html", "text/html", toHtml(body)),
    file("Description as plain text", "-description.txt", "text/plain", body),
  ];
}

/** What holds back every file that carries the description. */
function heldBack(ground: CopyDeskGround): Pick<EpisodeFile, "open" | "mendHref"> {
  const { checks, kept, stale } = pieceView(ground, "description", null);
  const open = checks.flatMap(({ level, findings }) =>
    findings.filter(({ key }) => level === "stop" || !kept.includes(key)).map(({ text }) => text),
  );
  return {
    open: stale ? [...open, "Records changed after the description was written."] : open,
    mendHref: `/copydesk/${ground.episode.weekOf}/description`,
  };
}

function json(value: unknown): string {
  return JSON.stringify(value, null, 2);
}
