"use client";

import { Face } from "#app/_ui/face.tsx";
import type { VerdictItem } from "#lib/use-cases/load-verdict-day.ts";
import type { VerdictFields } from "#lib/reactions/index.ts";
import { EATEN, type Person } from "./person.ts";
import { Portion } from "./portion.client.tsx";
import type { Shown } from "./use-verdicts.client.ts";
import { Words } from "./words.client.tsx";
import styles from "./verdicts.module.css";

/** A scale stands in one row, so that its steps are seen as steps. */
const FACES_ACROSS: Readonly<Record<number, string | undefined>> = {
  3: styles.three,
  7: styles.seven,
};

/** One item of one child: how much was eaten, which face, what was said, and a note. */
export function ItemSheet({
  item,
  child,
  verdict,
  onSay,
}: {
  readonly item: VerdictItem;
  readonly child: Person;
  readonly verdict: Shown;
  readonly onSay: (change: Partial<VerdictFields>) => void;
}) {
  return (
    <section className="sheet" aria-label={`${item.name}, ${child.name}`}>
      <div className={styles.itemHead}>
        <h2>{item.name}</h2>
        <Portion
          item={item}
          eaten={verdict.eaten}
          onEaten={(eaten) => {
            onSay({ eaten });
          }}
        />
      </div>
      <fieldset className={styles.scale}>
        <legend>How much was eaten?</legend>
        <div>
          {EATEN.map((word, quarters) => (
            <button
              key={word}
              type="button"
              className={styles.pick}
              aria-pressed={verdict.eaten === quarters}
              onClick={() => {
                onSay({ eaten: quarters });
              }}
            >
              <Cup left={1 - quarters / 4} />
              {word}
            </button>
          ))}
        </div>
      </fieldset>
      <fieldset className={styles.scale}>
        <legend>How was it, {child.name}?</legend>
        <div className={FACES_ACROSS[child.faces.length]}>
          {child.faces.map((face) => (
            <button
              key={face.value}
              type="button"
              className={styles.pick}
              aria-pressed={verdict.face === face.value}
              onClick={() => {
                onSay({ face: face.value });
              }}
            >
              <Face value={face.value} />
              {face.word}
            </button>
          ))}
        </div>
      </fieldset>
      <Words
        label={`In ${child.name}’s words (optional)`}
        kept={verdict.quote}
        most={500}
        onKeep={(quote) => {
          onSay({ quote });
        }}
      />
      <details className={styles.note} open={verdict.note !== ""}>
        <summary>Add a note</summary>
        <Words
          label="Late leftovers, a change of mind (optional)"
          kept={verdict.note}
          most={1000}
          onKeep={(note) => {
            onSay({ note });
          }}
        />
      </details>
    </section>
  );
}

/** What is left of a portion: told by the level, and by the word under it. */
function Cup({ left }: { readonly left: number }) {
  const top = 4 + 32 * (1 - left);
  return (
    <svg viewBox="0 0 52 40" width="52" height="40" aria-hidden="true">
      <rect
        x="2"
        y="2"
        width="48"
        height="36"
        rx="10"
        fill="var(--sheet)"
        stroke="currentColor"
        strokeWidth="2"
      />
      {left > 0 && (
        <path
          d={`M4 ${top}q11-3 22 0t22 0V28q0 8-8 8H12q-8 0-8-8z`}
          fill="currentColor"
          fillOpacity="0.28"
        />
      )}
      {left === 0 && (
        <path
          d="M14 30h.1M20 33h.1M37 31h.1"
          stroke="currentColor"
          strokeWidth="3"
          strokeLinecap="round"
        />
      )}
    </svg>
  );
}
