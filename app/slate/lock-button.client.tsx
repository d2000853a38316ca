"use client";

import { useState } from "react";
import { ProblemLine } from "#app/_forms/problem-line.tsx";
import { lockEpisodeAction } from "./actions.ts";

/** Locks a week, or takes the lock off; says why when it cannot. */
export function LockButton({
  episodeId,
  isLocked,
}: {
  readonly episodeId: string;
  readonly isLocked: boolean;
}) {
  const [problem, setProblem] = useState<string>();
  const change = async (): Promise<void> => {
    const state = await lockEpisodeAction({ episodeId, lock: !isLocked }).catch(() => undefined);
    if (!state) setProblem("Noonbook did not answer. Try again.");
    else setProblem(state.kind === "refused" ? state.message : undefined);
  };
  return (
    <>
      <button className="btn" type="button" onClick={() => void change()}>
        {isLocked ? "Take the lock off" : "Lock the week"}
      </button>
      <ProblemLine problem={problem} />
    </>
  );
}
