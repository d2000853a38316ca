"use client";

import { useRouter } from "next/navigation";
import { useState, type DragEvent, type ReactNode } from "react";
import { ProblemLine } from "#app/_forms/problem-line.tsx";
import { moveEpisodeAction, swapLunchesAction } from "./actions.ts";
import styles from "./slate.module.css";

/** What is dragged over the month: a lunch onto another day, or a whole week onto another week. */
type Dragged = { readonly kind: "lunch" | "week"; readonly id: string };

/**
 * A place on the month that something can be dragged from and dropped on. What is dropped changes places
 * with what stands there. The page of the week does the same by keyboard.
 */
export function DragPlace({
  kind,
  place,
  carries,
  className,
  children,
}: {
  readonly kind: Dragged["kind"];
  /** The date of the lunch, or the Monday of the week. */
  readonly place: string;
  /** The date or the id of the episode that can be dragged from here; undefined: it stays. */
  readonly carries: string | undefined;
  readonly className?: string | undefined;
  readonly children: ReactNode;
}) {
  const router = useRouter();
  const [isOver, setIsOver] = useState(false);
  const [problem, setProblem] = useState<string>();
  const type = `application/x-noonbook-${kind}`;
  const isMine = (event: DragEvent): boolean => event.dataTransfer.types.includes(type);

  const drop = async (event: DragEvent): Promise<void> => {
    if (!isMine(event)) return;
    event.preventDefault();
    setIsOver(false);
    const id = event.dataTransfer.getData(type);
    if (id === carries) return;
    const state = await (
      kind === "lunch"
        ? swapLunchesAction({ from: id, to: place })
        : moveEpisodeAction({ episodeId: id, monday: place })
    ).catch(() => undefined);
    if (!state) setProblem("Noonbook did not answer. Try again.");
    else if (state.kind === "refused") setProblem(state.message);
    else {
      setProblem(undefined);
      router.refresh();
    }
  };

  return (
    <div
      className={[className, isOver && styles.over, carries !== undefined && styles.carried]
        .filter(Boolean)
        .join(" ")}
      draggable={carries !== undefined}
      onDragStart={(event) => {
        if (
          carries === undefined ||
          event.dataTransfer.types.some((other) => /x-noonbook/.test(other))
        )
          return;
        event.dataTransfer.setData(type, carries);
        event.dataTransfer.effectAllowed = "move";
      }}
      onDragOver={(event) => {
        if (!isMine(event)) return;
        event.preventDefault();
        setIsOver(true);
      }}
      onDragLeave={() => {
        setIsOver(false);
      }}
      onDrop={(event) => void drop(event)}
    >
      {children}
      <ProblemLine problem={problem} />
    </div>
  );
}
