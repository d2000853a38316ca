"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useForm } from "react-hook-form";
import type { z } from "zod";
import { Field } from "#app/_forms/field.client.tsx";
import { EditSeriesInput } from "#lib/use-cases/edit-series.input.ts";
import { editSeriesAction } from "./actions.ts";
import styles from "./bible.module.css";

type Typed = z.input<typeof EditSeriesInput>;

/** Series name, departure and speaking; what is typed stays until it is saved. */
export function SeriesForm({ standing }: { readonly standing: EditSeriesInput }) {
  const { register, handleSubmit, setError, reset, getValues, formState } = useForm<
    Typed,
    unknown,
    EditSeriesInput
  >({ resolver: zodResolver(EditSeriesInput), defaultValues: standing });
  const { errors } = formState;

  const save = handleSubmit(async (input) => {
    const state = await editSeriesAction(input).catch(() => undefined);
    if (!state) {
      setError("root", {
        message: "Noonbook did not answer. What you typed is still here: try again.",
      });
    } else if (state.kind === "saved") {
      reset(getValues(), { keepIsSubmitSuccessful: true });
    } else if (state.kind === "refused") {
      setError("root", { message: state.message });
    } else {
      for (const [field, message] of Object.entries(state.fields)) {
        setError(field as "name", { message });
      }
    }
  });

  return (
    <form className={styles.form} onSubmit={(event) => void save(event)} noValidate>
      <Field label="Series name" {...register("name")} error={errors.name?.message} />
      <Field
        label="Out of the door at"
        type="time"
        {...register("departure")}
        error={errors.departure?.message}
      />
      <Field
        label="Words spoken a minute"
        type="number"
        {...register("wordsPerMinute", { valueAsNumber: true })}
        error={errors.wordsPerMinute?.message}
      />
      <Field label="Sign-on" {...register("signOn")} error={errors.signOn?.message} />
      <Field label="Sign-off" {...register("signOff")} error={errors.signOff?.message} />
      <div className="row">
        <button className="btn" type="submit" disabled={formState.isSubmitting}>
          {formState.isSubmitting ? "Saving …" : "Save the series"}
        </button>
        <span role="status">
          {formState.isSubmitSuccessful && !formState.isDirty ? "Saved." : ""}
        </span>
      </div>
      {errors.root && (
        <p className="rule-error" role="alert">
          {errors.root.message}
        </p>
      )}
    </form>
  );
}
