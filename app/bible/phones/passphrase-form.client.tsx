"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useForm } from "react-hook-form";
import type { z } from "zod";
import { Field } from "#app/_forms/field.client.tsx";
import { SetPassphraseInput } from "#lib/use-cases/set-passphrase.input.ts";
import styles from "../bible.module.css";
import { setPassphraseAction } from "./actions.ts";

type Typed = z.input<typeof SetPassphraseInput>;

/** Sets or changes the passphrase that lets other devices in. */
export function PassphraseForm({ isSet }: { readonly isSet: boolean }) {
  const { register, handleSubmit, setError, reset, formState } = useForm<
    Typed,
    unknown,
    SetPassphraseInput
  >({
    resolver: zodResolver(SetPassphraseInput),
    defaultValues: { current: "", next: "", again: "" },
  });
  const { errors } = formState;

  const save = handleSubmit(async (input) => {
    const state = await setPassphraseAction(input).catch(() => undefined);
    if (!state || state.kind === "refused") {
      setError("root", { message: state?.message ?? "Noonbook did not answer. Try again." });
    } else if (state.kind === "invalid") {
      for (const [field, message] of Object.entries(state.fields)) {
        setError(field as "next", { message });
      }
    } else {
      reset(undefined, { keepIsSubmitSuccessful: true });
    }
  });

  return (
    <form className={styles.form} onSubmit={(event) => void save(event)} noValidate>
      {isSet && (
        <Field
          label="Passphrase that holds now"
          type="password"
          autoComplete="current-password"
          {...register("current")}
          error={errors.current?.message}
        />
      )}
      <Field
        label={isSet ? "New passphrase" : "Passphrase"}
        type="password"
        autoComplete="new-password"
        hint="At least 15 characters; four or five words are easy to type on a phone."
        {...register("next")}
        error={errors.next?.message}
      />
      <Field
        label="The same again"
        type="password"
        autoComplete="new-password"
        {...register("again")}
        error={errors.again?.message}
      />
      <div className="row">
        <button className="btn" type="submit" disabled={formState.isSubmitting}>
          {isSet ? "Change it and send every device out" : "Set the passphrase"}
        </button>
        <span role="status">{formState.isSubmitSuccessful ? "Saved." : ""}</span>
      </div>
      {errors.root && (
        <p className="rule-error" role="alert">
          {errors.root.message}
        </p>
      )}
    </form>
  );
}
