"use client";

import { useRouter } from "next/navigation";
import { useState, type FormEvent } from "react";
import type { FieldValues, Path, UseFormReturn } from "react-hook-form";
import type { FormState } from "./form-state.ts";

const NO_ANSWER = "Noonbook did not answer. What you typed is still here: try again.";

/**
 * Sends a form to its server action as typed, after the form's own schema took it: errors come to stand
 * beside their fields, a refusal beside the button, and when saved the page goes where the action says.
 */
export function useSaving<Typed extends FieldValues, Parsed>(
  form: UseFormReturn<Typed, unknown, Parsed>,
  action: (typed: Typed) => Promise<FormState>,
): {
  readonly save: (event: FormEvent<HTMLFormElement>) => void;
  readonly isSaving: boolean;
  /** What is said beside the button. */
  readonly problem: string | undefined;
  /** "Saved." until something else is typed, for a form that stays where it is. */
  readonly status: string;
  /** To be called when something is typed. */
  readonly unsay: () => void;
} {
  const router = useRouter();
  const [status, setStatus] = useState("");
  const { errors, isSubmitting } = form.formState;
  const send = form.handleSubmit(async () => {
    setStatus("");
    const state = await action(form.getValues()).catch(() => undefined);
    if (!state) form.setError("root", { message: NO_ANSWER });
    else if (state.kind === "refused") form.setError("root", { message: state.message });
    else if (state.kind === "saved") {
      if (state.href) router.push(state.href);
      router.refresh();
      setStatus("Saved.");
    } else {
      Object.entries(state.fields).forEach(([field, message], index) => {
        form.setError(field as Path<Typed>, { message }, { shouldFocus: index === 0 });
      });
    }
  });
  const isMarked = Object.keys(errors).some((field) => field !== "root");
  return {
    save: (event) => void send(event),
    isSaving: isSubmitting,
    status,
    unsay: () => {
      setStatus("");
    },
    problem: errors.root?.message ?? (isMarked ? "Look at the marked fields." : undefined),
  };
}
