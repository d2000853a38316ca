"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useForm } from "react-hook-form";
import type { z } from "zod";
import { Area } from "#app/_forms/area.client.tsx";
import { Choice } from "#app/_forms/choice.client.tsx";
import { Field } from "#app/_forms/field.client.tsx";
import { FormEnd } from "#app/_forms/form-end.client.tsx";
import { Tick } from "#app/_forms/tick.client.tsx";
import { useSaving } from "#app/_forms/use-saving.client.ts";
import { SeriesInput } from "#lib/use-cases/bible/settings-sheets.input.ts";
import { saveSeriesAction } from "../actions.ts";
import styles from "../bible.module.css";

type Typed = z.input<typeof SeriesInput>;

/** The series' name and how it speaks. */
export function SeriesForm({ sheet }: { readonly sheet: Typed }) {
  const form = useForm<Typed, unknown, SeriesInput>({
    resolver: zodResolver(SeriesInput),
    defaultValues: sheet,
  });
  const { register, formState } = form;
  const { errors } = formState;
  const { save, isSaving, problem } = useSaving(form, saveSeriesAction);
  return (
    <form className={styles.form} onSubmit={save} noValidate>
      <div className={styles.fields}>
        <Field label="Series name" {...register("name")} error={errors.name?.message} />
        <Field
          label="Words spoken a minute"
          type="number"
          {...register("wordsPerMinute", { valueAsNumber: true })}
          error={errors.wordsPerMinute?.message}
        />
        <Choice
          label="Tone of the drafts"
          options={TONES}
          {...register("tone")}
          error={errors.tone?.message}
        />
      </div>
      <Field label="Sign-on" {...register("signOn")} error={errors.signOn?.message} />
      <Field label="Sign-off" {...register("signOff")} error={errors.signOff?.message} />
      <Area
        label="House phrases, one a line"
        hint="What this series always says."
        {...register("housePhrases")}
        error={errors.housePhrases?.message}
      />
      <Area
        label="Running features, one a line"
        hint="What viewers wait for: the blind taste, the note under the lid."
        {...register("runningFeatures")}
        error={errors.runningFeatures?.message}
      />
      <div className="row">
        <Tick label="Drafts may use emoji" {...register("emoji")} />
      </div>
      <FormEnd label="Save the series" back="/bible#series" isSaving={isSaving} problem={problem} />
    </form>
  );
}

const TONES = [
  ["warm", "Warm"],
  ["plain", "Plain"],
  ["playful", "Playful"],
] as const;
