"use client";

import { useId, type ComponentProps } from "react";
import { FieldNotes, notesOf } from "./field-notes.tsx";

/** A labelled text field with its error and hint beside it, tied together for a screen reader. */
export function Field({
  label,
  error,
  hint,
  ...input
}: ComponentProps<"input"> & {
  readonly label: string;
  readonly error?: string | undefined;
  readonly hint?: string | undefined;
}) {
  const id = useId();
  return (
    <div>
      <label htmlFor={id}>{label}</label>
      <input
        className="field"
        id={id}
        aria-invalid={error ? true : undefined}
        aria-describedby={notesOf(id, hint, error)}
        {...input}
      />
      <FieldNotes id={id} hint={hint} error={error} />
    </div>
  );
}
