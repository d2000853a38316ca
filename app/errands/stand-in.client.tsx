"use client";

import { useState } from "react";
import type { Day } from "#lib/calendar/index.ts";
import { findStandInsAction, standInAction } from "./actions.ts";

type Choice = { readonly id: string; readonly name: string };

/** Offers foods in the place of one that is not to be had, and puts one into the lunches. */
export function StandIn({ monday, foodId }: { readonly monday: Day; readonly foodId: string }) {
  const [choices, setChoices] = useState<readonly Choice[]>();
  const [status, setStatus] = useState("");
  const find = async (): Promise<void> => {
    const found = await findStandInsAction({ monday, foodId }).catch(() => undefined);
    setChoices(found);
    if (!found) setStatus("Noonbook did not answer. Try again.");
    else
      setStatus(found.length === 0 ? "Nothing on record fits. Change the lunch on the slate." : "");
  };
  const take = async (choice: Choice): Promise<void> => {
    const state = await standInAction({ monday, foodId, standInId: choice.id }).catch(
      () => undefined,
    );
    if (!state) setStatus("Noonbook did not answer, so nothing was changed. Try again.");
    else if (state.kind === "refused") setStatus(state.message);
    else setStatus(state.kind === "saved" ? `${choice.name} steps in.` : "");
  };
  return (
    <div>
      {choices === undefined ? (
        <button type="button" className="btn plain slim" onClick={() => void find()}>
          Find something else
        </button>
      ) : (
        choices.length > 0 && (
          <>
            <p className="small">
              In its place in all lunches still to be made. Read the labels first.
            </p>
            <div className="row">
              {choices.map((choice) => (
                <button
                  key={choice.id}
                  type="button"
                  className="chip"
                  onClick={() => void take(choice)}
                >
                  {choice.name}
                </button>
              ))}
            </div>
          </>
        )
      )}
      <p role="status" className="small">
        {status}
      </p>
    </div>
  );
}
