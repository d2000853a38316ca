"use client";

import { useState } from "react";
import { mediumDay, type Day } from "#lib/calendar/index.ts";
import { ProblemLine } from "#app/_forms/problem-line.tsx";
import styles from "./copydesk.module.css";
import { keepPromiseAction } from "./publish-actions.ts";

/** What is owed to viewers, with its days; a tick says that it was kept. */
export function Promises({
  promises,
  today,
}: {
  readonly promises: readonly {
    readonly id: string;
    readonly what: string;
    readonly dueOn: Day | null;
    readonly keptOn: Day | null;
  }[];
  readonly today: Day;
}) {
  const [problem, setProblem] = useState<string>();
  const tick = async (id: string, isKept: boolean): Promise<void> => {
    const state = await keepPromiseAction({ id, isKept }).catch(() => undefined);
    if (!state) setProblem("Noonbook did not answer. Try again.");
    else setProblem(state.kind === "refused" ? state.message : undefined);
  };
  if (promises.length === 0) return <p className="quiet">Nothing is owed to viewers.</p>;
  return (
    <>
      <ProblemLine problem={problem} />
      <ul className={styles.promises}>
        {promises.map(({ id, what, dueOn, keptOn }) => (
          <li key={id}>
            <label className={styles.choice}>
              <input
                type="checkbox"
                checked={keptOn !== null}
                onChange={(event) => void tick(id, event.target.checked)}
              />
              <span>{what}</span>
            </label>
            <span className="small quiet">{whenText(dueOn, keptOn, today)}</span>
          </li>
        ))}
      </ul>
    </>
  );
}

function whenText(dueOn: Day | null, keptOn: Day | null, today: Day): string {
  if (keptOn !== null) return `kept on ${mediumDay(keptOn)}`;
  if (dueOn === null) return "no date promised";
  return dueOn < today ? `overdue since ${mediumDay(dueOn)}` : `by ${mediumDay(dueOn)}`;
}
