"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useFieldArray, useForm } from "react-hook-form";
import type { FormState } from "#app/_forms/form-state.ts";
import { Field } from "#app/_forms/field.client.tsx";
import { Ticks } from "#app/_forms/ticks.client.tsx";
import { useSaving } from "#app/_forms/use-saving.client.ts";
import { forgetVerdictPages } from "#app/verdicts/forget-pages.client.ts";
import { WEEKDAY_OPTIONS } from "#app/bible/words.ts";
import { RULE_STARTS } from "#lib/safety/index.ts";
import { StartSeriesInput, type TypedStart } from "#lib/use-cases/start-series.input.ts";
import { ProblemLine } from "#app/_forms/problem-line.tsx";
import { startSeriesAction } from "./actions.ts";
import { StartChild } from "./start-child.client.tsx";
import { StartDaysOff } from "./start-days-off.client.tsx";
import { StartShops } from "./start-shops.client.tsx";
import styles from "./welcome.module.css";

const NEW_CHILD = { privateName: "", onScreenName: "", birthMonth: "", allergens: [] };

/** Starts the series; what a phone kept of the demo to open without a connection goes. */
async function start(typed: TypedStart): Promise<FormState> {
  const state = await startSeriesAction(typed);
  if (state.kind === "saved") await forgetVerdictPages();
  return state;
}

/** Name, children, school and shops of a series to start; what is typed stays until it is saved. */
export function StartForm() {
  const form = useForm<TypedStart, unknown, StartSeriesInput>({
    resolver: zodResolver(StartSeriesInput),
    defaultValues: {
      ...{ name: "", departure: "07:50", children: [], ruleStarts: [], shops: [] },
      ...{ schoolDays: ["1", "2", "3", "4", "5"], daysOff: [] },
    },
  });
  const { register, control, formState } = form;
  const { errors } = formState;
  const children = useFieldArray({ control, name: "children" });
  const { save, isSaving, problem } = useSaving(form, start);

  return (
    <form className={styles.form} onSubmit={save} noValidate>
      <Field label="Series name" {...register("name")} error={errors.name?.message} />
      <h3>Children</h3>
      {children.fields.map((child, index) => (
        <StartChild key={child.id} index={index} form={form} onRemove={children.remove} />
      ))}
      <div className="row">
        <button
          className="btn plain"
          type="button"
          onClick={() => {
            children.append(NEW_CHILD);
          }}
        >
          Add a child
        </button>
      </div>
      <h3>School</h3>
      <div className={styles.two}>
        <Field
          label="Out of the door at"
          type="time"
          {...register("departure")}
          error={errors.departure?.message}
        />
      </div>
      <Ticks
        legend="Packed lunches on"
        options={WEEKDAY_OPTIONS}
        {...register("schoolDays")}
        error={errors.schoolDays?.message}
      />
      <Ticks
        legend="Rules of the school, from our suggestions"
        hint="Each can be worded as your school does, and others added, in the series bible."
        options={RULE_STARTS.map(({ id, rule }) => [id, rule.name] as const)}
        {...register("ruleStarts")}
        error={errors.ruleStarts?.message}
      />
      <StartDaysOff form={form} />
      <h3>Shops</h3>
      <StartShops form={form} />
      <div className="row">
        <button className="btn" type="submit" disabled={isSaving}>
          {isSaving ? "Saving …" : "Start the series"}
        </button>
      </div>
      <ProblemLine problem={problem} />
    </form>
  );
}
