"use client";

import { useState } from "react";
import { proposeMonthAction } from "./actions.ts";

/** Pencils a proposal into the month's empty weeks; all of it can be changed afterwards. */
export function ProposeButton({ month }: { readonly month: string }) {
  const [status, setStatus] = useState<string>();
  const propose = async (): Promise<void> => {
    setStatus("Proposing …");
    const state = await proposeMonthAction({ month }).catch(() => undefined);
    if (!state) setStatus("Noonbook did not answer. Try again.");
    else setStatus(state.kind === "refused" ? state.message : "Pencilled in.");
  };
  return (
    <>
      <button className="btn" type="button" onClick={() => void propose()}>
        Propose the rest
      </button>
      <span role="status" className="small">
        {status}
      </span>
    </>
  );
}
