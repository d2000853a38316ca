"use client";

import type { VerdictConflict } from "#lib/reactions/index.ts";
import { EATEN, verdictWords, type Person } from "./person.ts";
import styles from "./verdicts.module.css";

/** Something that two phones said differently, in words, with what was said. */
export type Clash = {
  readonly key: string;
  /** "Apple, Biscuit" or "The day". */
  readonly about: string;
  readonly asks: string;
  readonly said: readonly {
    readonly words: string;
    readonly madeAt: string;
    readonly choose: () => void;
  }[];
};

/** Both values of every clash, to choose from; nothing is dropped until then. */
export function Conflicts({ clashes }: { readonly clashes: readonly Clash[] }) {
  if (clashes.length === 0) return null;
  return (
    <section className="sheet" aria-labelledby="clashes">
      <h2 id="clashes">Two phones disagree</h2>
      <p className="small quiet">
        Both answers are kept until you choose. The later one counts meanwhile.
      </p>
      <ul className={styles.clashes}>
        {clashes.map(({ key, about, asks, said }) => (
          <li key={key}>
            <p id={key}>
              <strong>{about}.</strong> {asks}
            </p>
            <div className="row" role="group" aria-labelledby={key}>
              {said.map(({ words, madeAt, choose }) => (
                <button className="chip" type="button" key={words} onClick={choose}>
                  {words}, {clockOf(madeAt)}
                </button>
              ))}
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}

const ASKS = {
  eaten: "How much was eaten?",
  face: "Which face was it?",
  quote: "What was said?",
  note: "Which note stays?",
} as const;

/** A verdict that two phones gave differently, as a question. */
export function verdictClash(
  about: { readonly itemId: string; readonly item: string; readonly child: Person },
  { field, said }: VerdictConflict,
  choose: (value: number | string | null) => void,
): Clash {
  return {
    key: `${about.itemId}-${about.child.id}-${field}`,
    about: `${about.item}, ${about.child.name}`,
    asks: ASKS[field],
    said: said.map(({ value, madeAt }) => ({
      words: inWords(field, value, about.child),
      madeAt,
      choose: () => {
        choose(value);
      },
    })),
  };
}

function inWords(
  field: VerdictConflict["field"],
  value: number | string | null,
  child: Person,
): string {
  if (value === null || value === "") return "nothing";
  if (field === "eaten") return `${EATEN[Number(value)] ?? ""} eaten`;
  if (field === "face") return verdictWords({ eaten: null, face: Number(value) }, child);
  return `“${value}”`;
}

/** "15:42" on the clock of this phone. */
function clockOf(instant: string): string {
  const at = new Date(instant);
  return `${String(at.getHours()).padStart(2, "0")}:${String(at.getMinutes()).padStart(2, "0")}`;
}
