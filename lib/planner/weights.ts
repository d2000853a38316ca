/** What a plan aims at. Each aim has a slider; the words are what the user reads. */
export const AIMS = [
  "theme",
  "liked",
  "fresh",
  "discoveries",
  "shops",
  "waste",
  "money",
  "work",
  "colours",
  "wishes",
] as const;
export type Aim = (typeof AIMS)[number];

/** Slider positions: 0 off, 1 usual, 3 most. */
export type Weights = Readonly<Record<Aim, number>>;

/** Each aim in plain words. */
export const AIM_WORDS: Readonly<Record<Aim, string>> = {
  theme: "fits the theme",
  liked: "the children will eat it",
  fresh: "fresh for viewers",
  discoveries: "new foods to film",
  shops: "few shops",
  waste: "little waste, owed food first",
  money: "cheap",
  work: "little morning work",
  colours: "colours of the box",
  wishes: "your wishes",
};

export const DEFAULT_WEIGHTS: Weights = {
  theme: 1,
  liked: 1,
  fresh: 1,
  discoveries: 1,
  shops: 1,
  waste: 1,
  money: 1,
  work: 1,
  colours: 1,
  wishes: 1,
};

/**
 * Points at slider position 1. Common practice, no source: chosen so that a quarter of an item eaten more
 * is worth about one that fits the theme, and a spared shop a third of one; on the demo year refusals,
 * echo and waste fall against plain filling at these.
 */
export const POINTS = {
  /** For an item that all children eat up. */
  liked: 25,
  /** Share of the worst-off child in `liked`; the rest is the mean of all. */
  worstOffShare: 0.3,
  /** For an item that fits the theme fully, up to `themeItemsMax` of them in a lunch. */
  theme: 6,
  themeItemsMax: 3,
  /** For an item unseen for `freshDays` or longer, or never. */
  fresh: 4,
  freshDays: 120,
  /** For a week's theme that viewers have never seen; a returning one gets half at most. */
  freshTheme: 40,
  /** Days until a theme is fresh again. */
  freshThemeDays: 730,
  /** For each further item of the same family in a week. */
  familyRepeat: -5,
  /** For a food no child knows yet, and for one standard deviation (a whole share) still unknown. */
  newFood: 5,
  unknown: 4,
  /** For one usual shop visited in a week. */
  shop: -8,
  /** For something owed and used in time. */
  owed: 8,
  wastePerCent: -0.05,
  moneyPerCent: -0.01,
  workPerMinute: -0.5,
  /** For each colour in a lunch, up to `coloursMax`. */
  colour: 2,
  coloursMax: 5,
} as const;
