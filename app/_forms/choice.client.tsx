"use client";

import { useId, type ComponentProps } from "react";
import { FieldNotes, notesOf } from "./field-notes.tsx";

/** One of several, from a list that opens; with its hint and error beside it. */
export function Choice({
  label,
  options,
  error,
  hint,
  ...select
}: ComponentProps<"select"> & {
  readonly label: string;
  readonly options: readonly (readonly [value: string, words: string])[];
  readonly error?: string | undefined;
  readonly hint?: string | undefined;
}) {
  const id = useId();
  return (
    <div>
      <label htmlFor={id}>{label}</label>
      <select
        className="field"
        id={id}
        aria-invalid={error ? true : undefined}
        aria-describedby={notesOf(id, hint, error)}
        {...select}
      >
        {options.map(([value, words]) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
      <FieldNotes id={id} hint={hint} error={error} />
    </div>
  );
}
