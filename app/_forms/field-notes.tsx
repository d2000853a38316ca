import styles from "./forms.module.css";

/** The ids of a field's hint and error, for `aria-describedby`. */
export function notesOf(
  id: string,
  hint: string | undefined,
  error: string | undefined,
): string | undefined {
  return [hint && `${id}-hint`, error && `${id}-error`].filter(Boolean).join(" ") || undefined;
}

/** A field's hint and error. */
export function FieldNotes({
  id,
  hint,
  error,
}: {
  readonly id: string;
  readonly hint: string | undefined;
  readonly error: string | undefined;
}) {
  return (
    <>
      {hint && (
        <p className={`small quiet ${styles.hint ?? ""}`} id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {error && (
        <p className="rule-error" id={`${id}-error`}>
          {error}
        </p>
      )}
    </>
  );
}
