"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useId } from "react";
import { useFieldArray, useForm } from "react-hook-form";
import type { z } from "zod";
import { DaysOffFields } from "#app/_forms/days-off-fields.client.tsx";
import { Field } from "#app/_forms/field.client.tsx";
import { FormEnd } from "#app/_forms/form-end.client.tsx";
import { Ticks } from "#app/_forms/ticks.client.tsx";
import { useSaving } from "#app/_forms/use-saving.client.ts";
import { DaysInput } from "#lib/use-cases/bible/settings-sheets.input.ts";
import { saveDaysAction } from "../actions.ts";
import styles from "../bible.module.css";
import { WEEKDAY_OPTIONS } from "../words.ts";

type Typed = z.input<typeof DaysInput>;

/** School weekdays, the hours of a school day, and the days off. */
export function DaysForm({
  sheet,
  zones,
}: {
  readonly sheet: Typed;
  /** Time zones to pick from. */
  readonly zones: readonly string[];
}) {
  const id = useId();
  const form = useForm<Typed, unknown, DaysInput>({
    resolver: zodResolver(DaysInput),
    defaultValues: sheet,
  });
  const { register, control, formState } = form;
  const { errors } = formState;
  const daysOff = useFieldArray({ control, name: "daysOff" });
  const { save, isSaving, problem } = useSaving(form, saveDaysAction);
  return (
    <form className={styles.form} onSubmit={save} noValidate>
      <Ticks
        legend="Packed lunches on"
        options={WEEKDAY_OPTIONS}
        {...register("schoolDays")}
        error={errors.schoolDays?.message}
      />
      <div className={styles.fields}>
        <Field
          label="Out of the door at"
          type="time"
          {...register("departure")}
          error={errors.departure?.message}
        />
        <Field
          label="Lunch is eaten at"
          type="time"
          {...register("lunchAt")}
          error={errors.lunchAt?.message}
        />
        <Field
          label="Verdicts from"
          type="time"
          {...register("verdictAt")}
          error={errors.verdictAt?.message}
        />
        <Field
          label="Time zone of the kitchen"
          hint="Empty: that of this computer. The calendar feed and the now-line go by it."
          list={`${id}-zones`}
          autoComplete="off"
          {...register("timeZone")}
          error={errors.timeZone?.message}
        />
        <datalist id={`${id}-zones`}>
          {zones.map((zone) => (
            <option key={zone} value={zone} />
          ))}
        </datalist>
      </div>
      <h2>Days off</h2>
      <p className="quiet">
        Lunches that stand on a day already stay; new weeks leave these days out.
      </p>
      <div>
        {daysOff.fields.map((row, index) => {
          const wrong = errors.daysOff?.[index];
          return (
            <div className={styles.line} key={row.id}>
              <DaysOffFields register={register} at={`daysOff.${index}`} errors={wrong} />
              <button
                className="btn plain slim"
                type="button"
                aria-label={`Take out days off ${index + 1}`}
                onClick={() => {
                  daysOff.remove(index);
                }}
              >
                Take out
              </button>
            </div>
          );
        })}
      </div>
      <div className="row">
        <button
          className="btn plain"
          type="button"
          onClick={() => {
            daysOff.append({ from: "", to: "", label: "" });
          }}
        >
          Add days off
        </button>
      </div>
      <FormEnd label="Save the days" back="/bible#days" isSaving={isSaving} problem={problem} />
    </form>
  );
}
