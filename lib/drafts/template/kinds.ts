/** The pieces that an episode is published with, in the order they are worked on. */
export const DRAFT_KINDS = [
  "outline",
  "shots",
  "titles",
  "description",
  "pinned",
  "lunch-post",
  "recap",
  "found",
  "teaser",
  "replies",
] as const;
export type DraftKind = (typeof DRAFT_KINDS)[number];

/** What each piece is called on a page. */
export const DRAFT_NAMES: Readonly<Record<DraftKind, string>> = {
  outline: "Script outline",
  shots: "Shot list",
  titles: "Title ideas",
  description: "Description",
  pinned: "Pinned comment",
  "lunch-post": "Lunch post",
  recap: "Week recap",
  found: "Where I found it",
  teaser: "Coming next",
  replies: "Reply snippets",
};

/** Pieces nobody but the user reads: no disclosure has to stand in them. */
export const PRIVATE_KINDS: ReadonlySet<DraftKind> = new Set(["shots", "titles", "replies"]);
