/** A refusal in words, and the field it belongs beside; without a field it is about the whole form. */
export type SheetProblem = { readonly kind: SheetRefusal; readonly field?: string };

type SheetRefusal =
  | "gone"
  | "changed-elsewhere"
  | "no-series"
  | "name-given-away"
  | "other-name-given-away"
  | "on-screen-name-taken"
  | "born-later"
  | "food-gone"
  | "family-gone"
  | "shop-name-taken"
  | "word-on-screen"
  | "theme-name-taken";

/** Words for a refusal of the series bible. */
export function describeSheetProblem({ kind }: SheetProblem): string {
  switch (kind) {
    case "gone":
      return "This was removed meanwhile. Open the series bible again.";
    case "changed-elsewhere":
      return "Another tab saved this sheet after you opened it. Nothing was overwritten: what you typed still stands here. Open the sheet in a new tab to compare, then reload this page and enter it again.";
    case "no-series":
      return "There is no series yet. Start one first.";
    case "name-given-away":
      return "Choose another name for the screen: it gives a private name away, and those never leave the house.";
    case "other-name-given-away":
      return "A child's on-screen name gives this name away. Change that one first.";
    case "on-screen-name-taken":
      return "Another child has this name on screen.";
    case "born-later":
      return "That month is still to come.";
    case "food-gone":
      return "This food is no longer in the Larder. Choose another.";
    case "family-gone":
      return "This family of foods is not known. Choose another.";
    case "shop-name-taken":
      return "Another shop goes by this name.";
    case "theme-name-taken":
      return "The pool has a theme of this name already.";
    case "word-on-screen":
      return "An on-screen name is among these words: every draft would have to leave it out.";
  }
}
