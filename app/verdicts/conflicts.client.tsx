"use client";

import type { VerdictConflict } from "#lib/reactions/index.ts";
import { EATEN, verdictWords, type Person } from "./person.ts";
import type { Change } from "./use-verdicts.client.ts";
import styles from "./verdicts.module.css";

/** A verdict that two phones gave differently. */
export type Clash = {
  readonly itemId: string;
  readonly item: string;
  readonly child: Person;
  readonly conflict: VerdictConflict;
};

const ASKS = {
  eaten: "How much was eaten?",
  face: "Which face was it?",
  quote: "What was said?",
  note: "Which note stays?",
} as const;

/** Both values of every clash, to choose from; nothing is dropped until then. */
export function Conflicts({
  clashes,
  onChoose,
}: {
  readonly clashes: readonly Clash[];
  readonly onChoose: (change: Change) => void;
}) {
  if (clashes.length === 0) return null;
  return (
    <section className="sheet" aria-labelledby="clashes">
      <h2 id="clashes">Two phones disagree</h2>
      <ul className={styles.clashes}>
        {clashes.map(({ itemId, item, child, conflict: { field, said } }) => (
          <li key={`${itemId} ${child.id} ${field}`}>
            <p id={`${itemId}-${child.id}-${field}`}>
              <strong>
                {item}, {child.name}.
              </strong>{" "}
              {ASKS[field]}
            </p>
            <div className="row" role="group" aria-labelledby={`${itemId}-${child.id}-${field}`}>
              {said.map(({ value, madeAt }) => (
                <button
                  className="chip"
                  type="button"
                  key={String(value)}
                  onClick={() => {
                    onChoose({ itemId, childId: child.id, change: { [field]: value } });
                  }}
                >
                  {words(field, value, child)}, {clockOf(madeAt)}
                </button>
              ))}
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}

function words(
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
