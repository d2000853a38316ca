"use client";

import { useFieldArray, type UseFormReturn } from "react-hook-form";
import { Field } from "#app/_forms/field.client.tsx";
import { Ticks } from "#app/_forms/ticks.client.tsx";
import { WEEKDAY_OPTIONS } from "#app/bible/words.ts";
import type { StartSeriesInput, TypedStart } from "#lib/use-cases/start-series.input.ts";
import styles from "./welcome.module.css";

/** The shops of the start form, the nearest first. */
export function StartShops({
  form,
}: {
  readonly form: UseFormReturn<TypedStart, unknown, StartSeriesInput>;
}) {
  const { register, control, formState } = form;
  const shops = useFieldArray({ control, name: "shops" });
  return (
    <>
      {shops.fields.map((row, index) => {
        const errors = formState.errors.shops?.[index];
        return (
          <fieldset className={styles.child} key={row.id}>
            <legend>Shop {index + 1}</legend>
            <Field
              label="Shop name"
              {...register(`shops.${index}.name`)}
              error={errors?.name?.message}
            />
            <Ticks
              legend="Open on"
              options={WEEKDAY_OPTIONS}
              {...register(`shops.${index}.days`)}
              error={errors?.days?.message}
            />
            <div>
              <button
                className="btn plain slim"
                type="button"
                onClick={() => {
                  shops.remove(index);
                }}
              >
                Take shop {index + 1} out
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
            shops.append({ name: "", days: ["1", "2", "3", "4", "5", "6"] });
          }}
        >
          Add a shop
        </button>
        {shops.fields.length > 1 && <span className="small quiet">The nearest first.</span>}
      </div>
    </>
  );
}
