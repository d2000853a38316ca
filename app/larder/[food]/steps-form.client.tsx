"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useFieldArray, useForm } from "react-hook-form";
import { APPLIANCES } from "#lib/catalog/index.ts";
import { StepsInput, type StepsFields } from "#lib/use-cases/larder/steps.input.ts";
import { Choice } from "#app/_forms/choice.client.tsx";
import { Field } from "#app/_forms/field.client.tsx";
import { StayEnd } from "#app/_forms/stay-end.client.tsx";
import { Tick } from "#app/_forms/tick.client.tsx";
import { useSaving } from "#app/_forms/use-saving.client.ts";
import { saveStepsAction } from "../actions.ts";
import styles from "../larder.module.css";

const APPLIANCE_OPTIONS = APPLIANCES.map(
  (one) => [one, one === "none" ? "nothing" : one.replaceAll("-", " ")] as const,
);
const EARLIEST_OPTIONS = [
  ["evening", "the night before, or later"],
  ["morning", "in the morning"],
] as const;
const NEW_STEP: StepsFields["steps"][number] = {
  ...{ name: "", minutes: "", isByHand: true, appliance: "none", earliest: "evening" },
  ...{ keepsMinutes: "", isAlongside: false },
};

/** The prep steps of a food, in order; the mise is planned from them. */
export function StepsForm({ standing }: { readonly standing: StepsFields }) {
  const form = useForm<StepsFields, unknown, StepsInput>({
    resolver: zodResolver(StepsInput),
    defaultValues: standing,
    values: standing,
    resetOptions: { keepDirtyValues: true },
  });
  const { register, control, formState } = form;
  const steps = useFieldArray({ control, name: "steps" });
  const { save, isSaving, problem, status, unsay } = useSaving(form, saveStepsAction);
  return (
    <form className={styles.form} onSubmit={save} onChange={unsay} noValidate>
      {steps.fields.map((row, index) => {
        const wrong = formState.errors.steps?.[index];
        const number = index + 1;
        return (
          <fieldset className={styles.step} key={row.id}>
            <legend className="label">Step {number}</legend>
            <div className={styles.trio}>
              <Field
                label="What is done"
                {...register(`steps.${index}.name`)}
                error={wrong?.name?.message}
              />
              <Field
                label="Minutes"
                inputMode="decimal"
                {...register(`steps.${index}.minutes`)}
                error={wrong?.minutes?.message}
              />
              <Choice
                label="It takes up"
                options={APPLIANCE_OPTIONS}
                {...register(`steps.${index}.appliance`)}
              />
            </div>
            <div className={styles.trio}>
              <Choice
                label="May be done"
                options={EARLIEST_OPTIONS}
                {...register(`steps.${index}.earliest`)}
              />
              <Field
                label="Keeps until packing, minutes"
                hint="Empty: however long."
                inputMode="decimal"
                {...register(`steps.${index}.keepsMinutes`)}
                error={wrong?.keepsMinutes?.message}
              />
            </div>
            <div className="row">
              <Tick label="By hand" {...register(`steps.${index}.isByHand`)} />
              {index > 0 && (
                <Tick
                  label="Need not wait for the step before"
                  {...register(`steps.${index}.isAlongside`)}
                />
              )}
              <button
                className="btn plain slim"
                type="button"
                disabled={index === 0}
                onClick={() => {
                  steps.move(index, index - 1);
                }}
              >
                Earlier<span className="sr">, step {number}</span>
              </button>
              <button
                className="btn plain slim"
                type="button"
                onClick={() => {
                  steps.remove(index);
                }}
              >
                Take out<span className="sr">, step {number}</span>
              </button>
            </div>
          </fieldset>
        );
      })}
      <StayEnd label="Save the steps" {...{ isSaving, status, problem }}>
        <button
          className="btn plain"
          type="button"
          onClick={() => {
            steps.append(NEW_STEP);
          }}
        >
          Add a step
        </button>
      </StayEnd>
    </form>
  );
}
