"use client";

import type { UseFormReturn } from "react-hook-form";
import { Field } from "#app/_forms/field.client.tsx";
import { Ticks } from "#app/_forms/ticks.client.tsx";
import { ALLERGEN_OPTIONS } from "#app/bible/words.ts";
import type { StartSeriesInput, TypedStart } from "#lib/use-cases/start-series.input.ts";
import styles from "./welcome.module.css";

/** One child of the start form: both names, birth month, allergens. */
export function StartChild({
  index,
  form,
  onRemove,
}: {
  readonly index: number;
  readonly form: UseFormReturn<TypedStart, unknown, StartSeriesInput>;
  readonly onRemove: (index: number) => void;
}) {
  const { register, formState } = form;
  const errors = formState.errors.children?.[index];
  return (
    <fieldset className={styles.child}>
      <legend>Child {index + 1}</legend>
      <div className={styles.two}>
        <Field
          label="Private name"
          hint="Never leaves the house."
          {...register(`children.${index}.privateName`)}
          error={errors?.privateName?.message}
        />
        <Field
          label="On-screen name"
          hint="The only name anything public uses."
          {...register(`children.${index}.onScreenName`)}
          error={errors?.onScreenName?.message}
        />
        <Field
          label="Born in (optional)"
          type="month"
          placeholder="2019-04"
          {...register(`children.${index}.birthMonth`)}
          error={errors?.birthMonth?.message}
        />
      </div>
      <Ticks
        legend="Allergies (optional)"
        hint="Taken as an allergy, makes that may hold it included, until you say more in the series bible. The label and the child’s doctor decide."
        options={ALLERGEN_OPTIONS}
        {...register(`children.${index}.allergens`)}
        error={errors?.allergens?.message}
      />
      <div>
        <button
          className="btn plain slim"
          type="button"
          onClick={() => {
            onRemove(index);
          }}
        >
          Take child {index + 1} out
        </button>
      </div>
    </fieldset>
  );
}
