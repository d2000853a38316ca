"use client";

import { useState } from "react";
import type { Settling } from "#lib/shopping/index.ts";
import type { OwedView } from "#lib/use-cases/errands/load-owed.ts";
import { settleOwedAction } from "./stock/actions.ts";
import styles from "./owed.module.css";

const WAYS: readonly (readonly [Settling, string])[] = [
  ["used", "Used"],
  ["frozen", "Frozen"],
  ["let-go", "Let go"],
];

/** Foods that were scrapped and are owed, each with what may become of it. */
export function OwedList({ owed }: { readonly owed: readonly OwedView[] }) {
  const [status, setStatus] = useState("");
  if (owed.length === 0) return <p className="small quiet">Nothing is owed.</p>;
  const settle = async (food: OwedView, how: Settling): Promise<void> => {
    const state = await settleOwedAction({ itemId: food.itemId, how }).catch(() => undefined);
    if (!state) setStatus("Noonbook did not answer, so nothing was changed. Try again.");
    else if (state.kind === "refused") setStatus(state.message);
    else setStatus(state.kind === "saved" ? `${food.food}: settled.` : "");
  };
  return (
    <>
      <ul className={styles.owed}>
        {owed.map((food) => (
          <li key={food.itemId}>
            <p>
              {food.sentence}
              {food.reason !== "" && <span className="quiet">. {food.reason}</span>}
            </p>
            <div className="row noprint">
              {WAYS.filter(([how]) => how === "let-go" || !food.isOver).map(([how, word]) => (
                <button
                  key={how}
                  type="button"
                  className="btn plain slim"
                  onClick={() => void settle(food, how)}
                >
                  {word}
                  <span className="sr">: {food.food}</span>
                </button>
              ))}
            </div>
          </li>
        ))}
      </ul>
      <p role="status" className="small">
        {status}
      </p>
    </>
  );
}
