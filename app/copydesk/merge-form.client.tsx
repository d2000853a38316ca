"use client";

import { useState, type FormEvent, type ReactNode } from "react";
import type { Choice } from "#lib/drafts/index.ts";
import type { MergeView } from "#lib/use-cases/piece-of.ts";
import { ProblemLine } from "#app/_forms/problem-line.tsx";
import { updateDraftAction } from "./actions.ts";
import styles from "./copydesk.module.css";
import type { PieceKey } from "./piece-key.ts";

/**
 * Brings a kept draft up to date: what would change, and for every passage that the user changed too a
 * choice of theirs, the new one or both. Nothing is taken over before each has one.
 */
export function MergeForm({
  id,
  piece,
  merge,
  from,
  anew,
  button,
  children,
}: {
  readonly id: string;
  readonly piece: PieceKey;
  readonly merge: MergeView;
  /** Whose the new words are, after "the": "records", "template". */
  readonly from: "records" | "template";
  /** With the latest version of the template. */
  readonly anew: boolean;
  readonly button: string;
  readonly children: ReactNode;
}) {
  const [choices, setChoices] = useState<Readonly<Record<number, Choice>>>({});
  const [problem, setProblem] = useState<string>();
  const theirs = from === "records" ? "the records’" : "the template’s";
  const options = [
    ["mine", "Keep mine"],
    ["theirs", `Take ${theirs}`],
    ["both", "Keep both"],
  ] as const;
  const update = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const chosen = merge.conflicts.map((_, index) => choices[index]);
    if (chosen.includes(undefined)) {
      setProblem("Say for each passage which way it goes.");
      return;
    }
    const state = await updateDraftAction({ ...piece, anew, choices: chosen }).catch(
      () => undefined,
    );
    if (!state) setProblem("Noonbook did not answer. Try again.");
    else setProblem(state.kind === "refused" ? state.message : undefined);
  };
  return (
    <form className={styles.stale} id={id} onSubmit={(event) => void update(event)}>
      {children}
      {merge.outdated.length + merge.fresh.length > 0 && (
        <details>
          <summary>What would change</summary>
          {merge.outdated.map((text, index) => (
            <p key={index}>
              <del>{text}</del>
            </p>
          ))}
          {merge.fresh.map((text, index) => (
            <p key={index}>
              <ins>{text}</ins>
            </p>
          ))}
        </details>
      )}
      {merge.conflicts.map((conflict, index) => (
        <fieldset className={styles.conflict} key={index}>
          <legend>You and the {from} both changed this passage</legend>
          <p>
            <b>Yours:</b> {conflict.mine || "struck"}
          </p>
          <p>
            <b>T{theirs.slice(1)}:</b> {conflict.theirs || "struck"}
          </p>
          <div className="row">
            {options.map(([choice, label]) => (
              <label className={styles.choice} key={choice}>
                <input
                  type="radio"
                  name={`${id}-${index}`}
                  checked={choices[index] === choice}
                  onChange={() => {
                    setChoices({ ...choices, [index]: choice });
                  }}
                />
                {label}
              </label>
            ))}
          </div>
        </fieldset>
      ))}
      <ProblemLine problem={problem} />
      <button className="btn slim" type="submit">
        {button}
      </button>
    </form>
  );
}
