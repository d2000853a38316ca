"use client";

import { useState } from "react";
import type { ChangeRunsInput } from "#lib/use-cases/errands/change-runs.input.ts";
import { changeRunsAction } from "./actions.ts";

/** Sends a decision about runs or lines; what came of it, in words. */
export function useChange(): {
  readonly change: (input: ChangeRunsInput) => Promise<boolean>;
  readonly status: string;
  readonly problems: Readonly<Record<string, string>>;
} {
  const [status, setStatus] = useState("");
  const [problems, setProblems] = useState<Readonly<Record<string, string>>>({});
  const change = async (input: ChangeRunsInput): Promise<boolean> => {
    const state = await changeRunsAction(input).catch(() => undefined);
    setProblems(state?.kind === "invalid" ? state.fields : {});
    if (!state) setStatus("Noonbook did not answer, so this was not kept. Try again.");
    else if (state.kind === "refused") setStatus(state.message);
    else setStatus(state.kind === "saved" ? "Kept." : "");
    return state?.kind === "saved";
  };
  return { change, status, problems };
}
