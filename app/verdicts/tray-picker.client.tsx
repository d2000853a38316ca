"use client";

import type { ComponentProps } from "react";
import { Tray } from "#app/_ui/tray.tsx";
import { compartmentAt } from "#app/_ui/tray-layout.ts";
import styles from "./verdicts.module.css";

/** The lunch's tray; a tap on a compartment chooses its item, as the buttons below do for the keyboard. */
export function TrayPicker({
  compartments,
  onPick,
}: {
  readonly compartments: ComponentProps<typeof Tray>["compartments"];
  readonly onPick: (key: string) => void;
}) {
  return (
    <div
      className={styles.picker}
      onClick={(event) => {
        const drawing = event.currentTarget.getBoundingClientRect();
        const weights = compartments.map(({ grams }) => grams);
        const picked = compartments[compartmentAt(event, drawing, weights)];
        if (picked) onPick(picked.key);
      }}
    >
      <Tray compartments={compartments} />
    </div>
  );
}
