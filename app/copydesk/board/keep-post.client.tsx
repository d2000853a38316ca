"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import type { BoardView } from "#lib/use-cases/load-board.ts";
import { ProblemLine } from "#app/_forms/problem-line.tsx";
import { keepPostAction } from "../board-actions.ts";

/** Keeps the post as a draft of its own, and opens it. */
export function KeepPost({ choice }: { readonly choice: BoardView["choice"] }) {
  const router = useRouter();
  const [problem, setProblem] = useState<string>();
  const keep = async (): Promise<void> => {
    const state = await keepPostAction(choice).catch(() => undefined);
    if (state?.kind === "saved" && state.href) router.push(state.href);
    else if (state?.kind === "refused") setProblem(state.message);
    else if (state?.kind === "invalid") setProblem(Object.values(state.fields)[0]);
    else setProblem("Noonbook did not answer. Try again.");
  };
  return (
    <>
      <ProblemLine problem={problem} />
      <button className="btn slim noprint" type="button" onClick={() => void keep()}>
        Keep this post
      </button>
    </>
  );
}
