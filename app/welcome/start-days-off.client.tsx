"use client";

import { useFieldArray, type UseFormReturn } from "react-hook-form";
import { DaysOffFields } from "#app/_forms/days-off-fields.client.tsx";
import type { StartSeriesInput, TypedStart } from "#lib/use-cases/start-series.input.ts";
import styles from "./welcome.module.css";

/** The days off of the start form. */
export function StartDaysOff({
  form,
}: {
  readonly form: UseFormReturn<TypedStart, unknown, StartSeriesInput>;
}) {
  const { register, control, formState } = form;
  const daysOff = useFieldArray({ control, name: "daysOff" });
  return (
    <>
      {daysOff.fields.map((row, index) => {
        const errors = formState.errors.daysOff?.[index];
        return (
          <fieldset className={styles.child} key={row.id}>
            <legend>Days off {index + 1}</legend>
            <div className={styles.two}>
              <DaysOffFields register={register} at={`daysOff.${index}`} errors={errors} />
            </div>
            <div>
              <button
                className="btn plain slim"
                type="button"
                onClick={() => {
                  daysOff.remove(index);
                }}
              >
                Take days off {index + 1} out
              </button>
            </div>
          </fieldset>
        );
      })}
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
    </>
  );
}
