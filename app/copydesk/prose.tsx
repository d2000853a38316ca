import type { OwnSentence } from "#lib/drafts/index.ts";
import type { RecordView } from "#lib/use-cases/record-view.ts";
import styles from "./copydesk.module.css";

/** How a sentence is drawn: by what it rests on, and whether a guard stopped at it. */
export type Shown = {
  readonly numberOf: (factId: string) => number;
  readonly restsOn: (factId: string) => RecordView["rests"] | undefined;
  readonly isStopped: (line: number, at: number) => boolean;
  readonly chosen: string | undefined;
  readonly choose: (factId: string) => void;
};

/** A sentence with the line of its records beneath and a number for each. */
export function ShownSentence({
  sentence,
  isStopped,
  shown,
}: {
  readonly sentence: OwnSentence;
  readonly isStopped: boolean;
  readonly shown: Shown;
}) {
  const [first] = sentence.facts;
  const rests = first === undefined ? undefined : shown.restsOn(first);
  const isHere = sentence.facts.some((id) => id === shown.chosen);
  const classes = [
    rests && styles.rests,
    rests && styles[rests],
    isHere && styles.here,
    isStopped && styles.stopped,
    sentence.isOwn && styles.own,
  ];
  return (
    <>
      <span className={classes.filter(Boolean).join(" ")}>
        {isStopped && <span className="sr">Rule broken: </span>}
        {sentence.text}
      </span>
      {sentence.facts.map((id) => (
        <button
          className={styles.ref}
          key={id}
          type="button"
          aria-pressed={id === shown.chosen}
          aria-label={`Record ${shown.numberOf(id)}`}
          onClick={() => {
            shown.choose(id);
          }}
        >
          {shown.numberOf(id)}
        </button>
      ))}{" "}
    </>
  );
}

/** Lines as paragraphs: an empty line parts two, any other begins a new line of the same. */
export function paragraphsOf(
  lines: readonly (readonly OwnSentence[])[],
): { readonly line: number; readonly sentences: readonly OwnSentence[] }[][] {
  const paragraphs: { line: number; sentences: readonly OwnSentence[] }[][] = [[]];
  lines.forEach((sentences, line) => {
    if (sentences.length === 0) paragraphs.push([]);
    else paragraphs.at(-1)?.push({ line, sentences });
  });
  return paragraphs.filter((paragraph) => paragraph.length > 0);
}
