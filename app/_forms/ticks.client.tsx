"use client";

import { useId, type ComponentProps } from "react";
import { FieldNotes, notesOf } from "./field-notes.tsx";
import styles from "./forms.module.css";

/** Several of some choices, each a box to tick; hand it `register(…)`, the ticked values are a list. */
export function Ticks({
  legend,
  options,
  error,
  hint,
  ...box
}: ComponentProps<"input"> & {
  readonly legend: string;
  readonly options: readonly (readonly [value: string, words: string])[];
  readonly error?: string | undefined;
  readonly hint?: string | undefined;
}) {
  const id = useId();
  return (
    <fieldset className={styles.ticks} aria-describedby={notesOf(id, hint, error)}>
      <legend className="label">{legend}</legend>
      <div className={styles.boxes}>
        {options.map(([value, words]) => (
          <label className={styles.tick} key={value}>
            <input type="checkbox" value={value} {...box} />
            {words}
          </label>
        ))}
      </div>
      <FieldNotes id={id} hint={hint} error={error} />
    </fieldset>
  );
}
