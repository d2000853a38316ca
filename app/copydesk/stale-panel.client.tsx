"use client";

import { useState, type FormEvent } from "react";
import type { Choice, FactChange } from "#lib/drafts/index.ts";
import type { StaleView } from "#lib/use-cases/piece-view.ts";
import { Icon } from "#app/_ui/icon.tsx";
import { updateDraftAction } from "./actions.ts";
import styles from "./copydesk.module.css";
import type { PieceKey } from "./piece-key.ts";

const CHOICES = [
  ["mine", "Keep mine"],
  ["theirs", "Take the records’"],
  ["both", "Keep both"],
] as const;

/** What changed in the records since a draft was written, what that would change, and how to take it over. */
export function StalePanel({
  piece,
  stale,
}: {
  readonly piece: PieceKey;
  readonly stale: StaleView;
}) {
  const [choices, setChoices] = useState<Readonly<Record<number, Choice>>>({});
  const [problem, setProblem] = useState<string>();
  const update = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const chosen = stale.conflicts.map((_, index) => choices[index]);
    if (chosen.includes(undefined)) {
      setProblem("Say for each passage which way it goes.");
      return;
    }
    const state = await updateDraftAction({ ...piece, choices: chosen }).catch(() => undefined);
    if (!state) setProblem("Noonbook did not answer. Try again.");
    else setProblem(state.kind === "refused" ? state.message : undefined);
  };
  const count = Math.max(stale.outdated.length, stale.fresh.length);
  return (
    <form className={styles.stale} id="stale" onSubmit={(event) => void update(event)}>
      <p>
        <Icon name="pencil" />{" "}
        <b>
          Stale: {count} {count === 1 ? "sentence needs" : "sentences need"} a second look.
        </b>{" "}
        {stale.changes.map(changeText).join(" ")}
      </p>
      <details>
        <summary>What would change</summary>
        {stale.outdated.map((text) => (
          <p key={text}>
            <del>{text}</del>
          </p>
        ))}
        {stale.fresh.map((text) => (
          <p key={text}>
            <ins>{text}</ins>
          </p>
        ))}
      </details>
      {stale.conflicts.map((conflict, index) => (
        <fieldset className={styles.conflict} key={index}>
          <legend>You and the records both changed this passage</legend>
          <p>
            <b>Yours:</b> {conflict.mine || "struck"}
          </p>
          <p>
            <b>The records’:</b> {conflict.theirs || "struck"}
          </p>
          <div className="row">
            {CHOICES.map(([choice, label]) => (
              <label className={styles.choice} key={choice}>
                <input
                  type="radio"
                  name={`conflict-${index}`}
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
      {problem && (
        <p className="rule-error" role="alert">
          {problem}
        </p>
      )}
      <button className="btn slim" type="submit">
        Bring it up to date
      </button>
    </form>
  );
}

/** "Pepper’s verdict of Thu 5 March changed: kiwi was ½, is ¼." */
function changeText({ label, was, now }: FactChange): string {
  if (!was) return `New: ${label}.`;
  if (!now) return `Gone: ${label}.`;
  const names = [...new Set([...was, ...now].map(([name]) => name))];
  const parts = names.flatMap((name) => {
    const [before, after] = [was, now].map((rows) => rows.find(([one]) => one === name)?.[1]);
    if (before === after) return [];
    return [`${name} was ${before ?? "not there"}, is ${after ?? "gone"}`];
  });
  return `${label} changed: ${parts.join("; ")}.`;
}
