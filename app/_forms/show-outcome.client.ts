import type { FieldValues, Path, UseFormSetError } from "react-hook-form";
import type { FormState } from "./form-state.ts";

/** Puts what an action answered into the form: true when it was saved. Undefined: there was no answer. */
export function showOutcome<Fields extends FieldValues>(
  state: FormState | undefined,
  setError: UseFormSetError<Fields>,
): boolean {
  if (!state) {
    const message = "Noonbook did not answer. What you typed is still here: try again.";
    setError("root", { message });
  } else if (state.kind === "refused") {
    setError("root", { message: state.message });
  } else if (state.kind === "invalid") {
    for (const [field, message] of Object.entries(state.fields)) {
      setError(field as Path<Fields>, { message });
    }
  }
  return state?.kind === "saved";
}
