/** Drafts: facts from records, templates, sentences that know their records, and guards before copying. */
export type {
  DraftChild,
  DraftItem,
  DraftLunch,
  DraftReaction,
  EpisodeRecords,
  ProductRecord,
  PromiseRecord,
  Voice,
} from "./records.ts";
export { factsOf } from "./facts/facts-of.ts";
export { RESTS_ON, type Detail, type Fact, type FactKind, type Ref } from "./facts/fact.ts";
export { compose, tellingOf, type Composed } from "./compose.ts";
export { DRAFT_KINDS, DRAFT_NAMES, PRIVATE_KINDS, type DraftKind } from "./template/kinds.ts";
export { DEFAULT_TEMPLATES } from "./template/defaults.ts";
export { TEMPLATE_MOST, type TemplateProblem } from "./template/engine.ts";
export { type Told } from "./template/scope.ts";
export { textOfLines, type Line, type Sentence } from "./text/sentences.ts";
export { ownLines } from "./text/own-lines.ts";
export { applyFix } from "./guards/apply-fix.ts";
export type { Check, Finding, Fix, GuardGround, OwnSentence, Place } from "./guards/check.ts";
export { checksOf, openFindings } from "./guards/checks-of.ts";
export { beatsOf, type Beat } from "./timing/beats.ts";
export { countWords, runningTime, spokenSeconds } from "./timing/spoken-time.ts";
export {
  stalenessOf,
  type FactChange,
  type FactThen,
  type Staleness,
  type WrittenDraft,
} from "./revise/stale.ts";
export { correctionNote, lateChanges, type LateChange } from "./revise/correction.ts";
export { mergeDraft, type Choice, type Conflict } from "./revise/merge.ts";
export { openerTurn, type Opener } from "./revise/opener-turn.ts";
export {
  chapterLines,
  chapterProblems,
  chaptersOf,
  describeChapterProblem,
  readRunningTime,
  type Chapter,
} from "./timing/chapters.ts";
export { chaptersVtt } from "./outputs/webvtt.ts";
export {
  isoDuration,
  recipe,
  videoObject,
  weekList,
  type HouseRecipe,
} from "./outputs/structured.ts";
export { toHtml, toMarkdown } from "./outputs/markup.ts";
export { countText, readingEase, readingGrade } from "./outputs/readability.ts";
export { boardPost, type BoardPost, type BoardSubject } from "./board/board-post.ts";
export { screenShares, shareNamed, type ScreenShare } from "./timing/screen-share.ts";
