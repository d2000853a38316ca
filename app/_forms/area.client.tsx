"use client";

import { useId, type ComponentProps } from "react";
import { FieldNotes, notesOf } from "./field-notes.tsx";

/** A labelled text of several lines, with its hint and error beside it. */
export function Area({
  label,
  error,
  hint,
  ...area
}: ComponentProps<"textarea"> & {
  readonly label: string;
  readonly error?: string | undefined;
  readonly hint?: string | undefined;
}) {
  const id = useId();
  return (
    <div>
      <label htmlFor={id}>{label}</label>
      <textarea
        className="field"
        id={id}
        rows={4}
        aria-invalid={error ? true : undefined}
        aria-describedby={notesOf(id, hint, error)}
        {...area}
      />
      <FieldNotes id={id} hint={hint} error={error} />
    </div>
  );
}
