"use client";

import { useState } from "react";
import { undoSwapAction } from "./actions.ts";

/** What stays out of the tin, each with a way back in. */
export function SwapBack({
  items,
}: {
  readonly items: readonly {
    readonly id: string;
    readonly name: string;
    readonly reason: string;
  }[];
}) {
  const [status, setStatus] = useState("");
  const undo = async (itemId: string): Promise<void> => {
    const state = await undoSwapAction({ itemId }).catch(() => undefined);
    if (!state) setStatus("Noonbook did not answer, so nothing was changed. Try again.");
    else setStatus(state.kind === "refused" ? state.message : "");
  };
  return (
    <>
      <ul>
        {items.map(({ id, name, reason }) => (
          <li key={id} className="row">
            <span>
              {name} stays out: {reason}
            </span>
            <button type="button" className="btn plain" onClick={() => void undo(id)}>
              Take it back<span className="sr">: the swap of {name}</span>
            </button>
          </li>
        ))}
      </ul>
      <p role="status" className="small">
        {status}
      </p>
    </>
  );
}
