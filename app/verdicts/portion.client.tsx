"use client";

import { useState, type PointerEvent } from "react";
import type { Colour, Pattern } from "#lib/catalog/index.ts";
import { Tray } from "#app/_ui/tray.tsx";
import styles from "./verdicts.module.css";

/**
 * The portion, emptied by dragging or tapping down the drawing; the buttons below it say the same for the
 * keyboard and the screen reader.
 */
export function Portion({
  item,
  eaten,
  onEaten,
}: {
  readonly item: { readonly colour: Colour; readonly pattern: Pattern };
  readonly eaten: number | null;
  readonly onEaten: (quarters: number) => void;
}) {
  const [dragged, setDragged] = useState<number>();
  const follow = (event: PointerEvent<HTMLDivElement>): void => {
    if (event.type === "pointermove" && dragged === undefined) return;
    if (event.type === "pointerdown") event.currentTarget.setPointerCapture(event.pointerId);
    const { top, height } = event.currentTarget.getBoundingClientRect();
    const share = (event.clientY - top) / height;
    setDragged(Math.min(4, Math.max(0, Math.round(share * 4))));
  };
  const drop = (): void => {
    if (dragged === undefined) return;
    setDragged(undefined);
    if (dragged !== eaten) onEaten(dragged);
  };
  const shown = dragged ?? eaten ?? undefined;
  return (
    <div
      className={styles.portion}
      aria-hidden="true"
      onPointerDown={follow}
      onPointerMove={follow}
      onPointerUp={drop}
      onPointerCancel={() => {
        setDragged(undefined);
      }}
    >
      <Tray
        compartments={[
          {
            ...item,
            key: "portion",
            name: shown === undefined ? "drag down" : "",
            grams: 1,
            eaten: shown,
          },
        ]}
      />
    </div>
  );
}
