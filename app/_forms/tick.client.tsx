"use client";

import type { ComponentProps } from "react";
import styles from "./forms.module.css";

/** One box to tick: yes or no. */
export function Tick({ label, ...box }: ComponentProps<"input"> & { readonly label: string }) {
  return (
    <label className={styles.tick}>
      <input type="checkbox" {...box} />
      {label}
    </label>
  );
}
