import type { DraftRecord } from "#lib/db/index.ts";
import {
  beatsOf,
  DRAFT_KINDS,
  DRAFT_NAMES,
  lateChanges,
  PRIVATE_KINDS,
  ownLines,
  type LateChange,
  type OwnSentence,
} from "#lib/drafts/index.ts";
import type { CopyDeskGround } from "./copy-desk-ground.ts";
import { composePiece } from "./piece-view.ts";

type Published = NonNullable<DraftRecord["written"]["published"]>;

/** What of a draft goes out as it stands: its sentences that tell facts, the user's own ones left out. */
export function publishedOf({ kind, body, templateVersion, written }: DraftRecord): Published {
  const sentences = publicSentences(kind, ownLines(body, written.lines))
    .filter(({ facts, isOwn }) => !isOwn && facts.length > 0)
    .map(({ text, facts }) => ({ text, facts: [...facts] }));
  return { sentences, templateVersion, salt: written.salt };
}

/** All of a text; of an outline what is said, without its cues. Its speaking rate does not matter here. */
function publicSentences(
  kind: string,
  lines: readonly (readonly OwnSentence[])[],
): readonly OwnSentence[] {
  return kind === "outline" ? beatsOf(lines, 150).flatMap(({ sound }) => sound) : lines.flat();
}

/** What of an episode's published pieces the records no longer hold. */
export function changesSincePublished(ground: CopyDeskGround): LateChange[] {
  return ground.drafts
    .filter(({ publishedOn }) => publishedOn !== null)
    .flatMap((draft) => {
      const kind = DRAFT_KINDS.find((one) => one === draft.kind && !PRIVATE_KINDS.has(one));
      if (!kind) return [];
      const name = kind === "outline" ? "video" : DRAFT_NAMES[kind];
      const { sentences, templateVersion, salt } = draft.written.published ?? publishedOf(draft);
      const now = composePiece(ground, kind, draft.lunchId, {
        ...{ templateVersion, written: { ...draft.written, salt } },
      });
      if (!now.ok) return [];
      const lines = now.value.lines.map((line) => line.map((one) => ({ ...one, isOwn: false })));
      return lateChanges(name, sentences, publicSentences(kind, lines));
    });
}
