"use client";

import { useState } from "react";
import type { FormState } from "#app/_forms/form-state.ts";

/** Sends a change of stock and keeps what came of it, in words. */
export function useStockChange(): {
  readonly send: (action: Promise<FormState>) => Promise<boolean>;
  readonly status: string;
  readonly problems: Readonly<Record<string, string>>;
} {
  const [status, setStatus] = useState("");
  const [problems, setProblems] = useState<Readonly<Record<string, string>>>({});
  const send = async (action: Promise<FormState>): Promise<boolean> => {
    const state = await action.catch(() => undefined);
    setProblems(state?.kind === "invalid" ? state.fields : {});
    if (!state) setStatus("Noonbook did not answer. What you typed is still here: try again.");
    else if (state.kind === "refused") setStatus(state.message);
    else setStatus(state.kind === "saved" ? "Kept." : "");
    return state?.kind === "saved";
  };
  return { send, status, problems };
}
