"use client";

import { useState } from "react";
import { ProblemLine } from "#app/_forms/problem-line.tsx";
import { retireAction } from "./actions.ts";

/** Takes something out of use, or brings it back; its history stays either way. */
export function RetireButton({
  kind,
  id,
  name,
  isRetired,
}: {
  readonly kind: "food" | "product" | "trick";
  readonly id: string;
  readonly name: string;
  readonly isRetired: boolean;
}) {
  const [problem, setProblem] = useState<string>();
  const change = async (): Promise<void> => {
    const state = await retireAction({ kind, id, isRetired: !isRetired }).catch(() => undefined);
    if (!state) setProblem("Noonbook did not answer. Try again.");
    else setProblem(state.kind === "refused" ? state.message : undefined);
  };
  return (
    <>
      <button className="btn plain" type="button" onClick={() => void change()}>
        {isRetired ? "Bring back" : "Retire"}
        <span className="sr"> {name}</span>
      </button>
      <ProblemLine problem={problem} />
    </>
  );
}
