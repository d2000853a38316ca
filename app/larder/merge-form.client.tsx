"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { FoodFinder } from "#app/slate/food-finder.client.tsx";
import { useLarder } from "#app/_forms/use-larder.client.ts";
import { ProblemLine } from "#app/_forms/problem-line.tsx";
import { mergeFoodsAction, undoMergeAction } from "./actions.ts";

/** Finds the food that this one is a duplicate of, asks once more, and merges. */
export function MergeForm({ foodId, name }: { readonly foodId: string; readonly name: string }) {
  const router = useRouter();
  const larder = useLarder();
  const [into, setInto] = useState<{ readonly id: string; readonly name: string }>();
  const [problem, setProblem] = useState<string>();
  const merge = async (): Promise<void> => {
    const state = await mergeFoodsAction({ from: foodId, into: into?.id ?? "" }).catch(
      () => undefined,
    );
    if (!state) setProblem("Noonbook did not answer. Try again.");
    else if (state.kind === "refused") setProblem(state.message);
    else if (state.kind === "invalid") setProblem(state.fields["into"]);
    else if (state.href) router.push(state.href);
  };
  return (
    <>
      <FoodFinder
        label="It is the same as"
        larder={larder}
        onChoose={(food) => {
          setInto(food);
          setProblem(undefined);
        }}
      />
      {into && (
        <div className="row">
          <p>
            All that was ever said of <b>{name}</b> goes to <b>{into.name}</b>. It can be taken back
            on that food’s page.
          </p>
          <button className="btn" type="button" onClick={() => void merge()}>
            Merge into {into.name}
          </button>
          <button
            className="btn plain"
            type="button"
            onClick={() => {
              setInto(undefined);
            }}
          >
            Leave it
          </button>
        </div>
      )}
      <ProblemLine problem={problem} />
    </>
  );
}

/** Takes one merge back. */
export function UndoMergeButton({
  changeId,
  label,
}: {
  readonly changeId: string;
  readonly label: string;
}) {
  const [problem, setProblem] = useState<string>();
  const undo = async (): Promise<void> => {
    const state = await undoMergeAction({ changeId }).catch(() => undefined);
    if (!state) setProblem("Noonbook did not answer. Try again.");
    else setProblem(state.kind === "refused" ? state.message : undefined);
  };
  return (
    <>
      <button className="btn plain slim" type="button" onClick={() => void undo()}>
        Take back: {label}
      </button>
      <ProblemLine problem={problem} />
    </>
  );
}
