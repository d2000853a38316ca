"use client";

import { useId, type ComponentProps } from "react";

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
  const notes = [hint && `${id}-hint`, error && `${id}-error`].filter(Boolean).join(" ");
  return (
    <div>
      <label htmlFor={id}>{label}</label>
      <input
        className="field"
        id={id}
        aria-invalid={error ? true : undefined}
        aria-describedby={notes || undefined}
        {...input}
      />
      {hint && (
        <p className="small quiet" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {error && (
        <p className="rule-error" id={`${id}-error`}>
          {error}
        </p>
      )}
    </div>
  );
}
