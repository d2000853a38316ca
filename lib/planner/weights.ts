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
 * Points at slider position 1. Common practice, no source: tuned on some months of the demo so that, on
 * others, refusals, waste and echo all fall against plain filling and against what was not seen longest
 * (`npm run bench -- ablation`).
 */
export const POINTS = {
  /** For an item that all children are sure to eat up; as many are lost with one that all are sure to leave. */
  liked: 20,
  /** Share of the worst-off child in `liked`; the rest is the mean of all. */
  worstOffShare: 0.5,
  /** Standard deviations taken off what a child is expected to eat: the unfamiliar is eaten less at first. */
  caution: 0.35,
  /** Share of the odds of a refusal in `liked`; the rest is how much is eaten. */
  refusalShare: 0.75,
  /** For an item that fits the theme fully, up to `themeItemsMax` of them in a lunch. */
  theme: 8,
  themeItemsMax: 3,
  /** For a week's echo with the closest earlier one, by what each item adds beyond the usual. */
  echo: -4000,
  usualEcho: 0.002,
  /** For a week's theme that shares nothing with weeks shown; half of it is gone at `nearThemeEcho`. */
  freshTheme: 250,
  nearThemeEcho: 0.05,
  /** For each further appearance of a food or a trick in the plan. */
  foodRepeat: -18,
  trickRepeat: -6,
  /** For each further item of the same family in a week. */
  familyRepeat: -3,
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
