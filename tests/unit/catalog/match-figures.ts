import { matchFood, type NamedFood } from "#lib/catalog/index.ts";

/** A phrase, and the names of the foods it may mean; null stands for none of them. */
export type LabelledPhrase = {
  readonly phrase: string;
  readonly expected: readonly (string | null)[];
};

/** How well a set of labelled phrases was matched. */
export type MatchFigures = {
  readonly right: number;
  readonly phrases: number;
  readonly wrongPositives: number;
  readonly negatives: number;
  readonly wrong: readonly string[];
};

/** Reads lines of "phrase => name | name", where "-" is none. */
export function labelledPhrases(text: string): LabelledPhrase[] {
  return text
    .trim()
    .split("\n")
    .map((line) => {
      const at = line.lastIndexOf(" => ");
      const expected = line.slice(at + 4).split(" | ");
      return {
        phrase: line.slice(0, at).trim(),
        expected: expected.map((name) => (name.trim() === "-" ? null : name.trim())),
      };
    });
}

/** Matches every phrase and counts; a negative is a phrase whose first answer is "none". */
export function matchFigures(
  labelled: readonly LabelledPhrase[],
  foods: readonly NamedFood[],
  isSame = (got: NamedFood, name: string): boolean => got.name === name,
): MatchFigures {
  const outcomes = labelled.map(({ phrase, expected }) => {
    const got = matchFood(phrase, foods).best?.food ?? null;
    const isRight = expected.some((name) =>
      name === null || got === null ? name === got : isSame(got, name),
    );
    return { phrase, isRight, isNegative: expected[0] === null, got };
  });
  const negatives = outcomes.filter(({ isNegative }) => isNegative);
  return {
    right: outcomes.filter(({ isRight }) => isRight).length,
    phrases: outcomes.length,
    wrongPositives: negatives.filter(({ isRight }) => !isRight).length,
    negatives: negatives.length,
    wrong: outcomes
      .filter(({ isRight }) => !isRight)
      .map(({ phrase, got }) => `${phrase} -> ${got?.name ?? "none"}`),
  };
}

/** The figures in one line, for the test's output. */
export function describeFigures(name: string, figures: MatchFigures): string {
  const { right, phrases, wrongPositives, negatives } = figures;
  const percent = ((100 * right) / phrases).toFixed(1);
  return `${name}: ${right} of ${phrases} right (${percent} %), ${wrongPositives} of ${negatives} negatives wrongly matched`;
}
