"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useFieldArray, useForm } from "react-hook-form";
import type { z } from "zod";
import { Field } from "#app/_forms/field.client.tsx";
import { FormEnd } from "#app/_forms/form-end.client.tsx";
import { Tick } from "#app/_forms/tick.client.tsx";
import { Ticks } from "#app/_forms/ticks.client.tsx";
import { useLarder } from "#app/_forms/use-larder.client.ts";
import { useSaving } from "#app/_forms/use-saving.client.ts";
import { FoodFinder } from "#app/slate/food-finder.client.tsx";
import { FoodId } from "#lib/catalog/index.ts";
import { RuleInput } from "#lib/use-cases/bible/rule-sheet.input.ts";
import { saveRuleAction } from "./actions.ts";
import styles from "./bible.module.css";
import { ALLERGEN_OPTIONS, TRAIT_OPTIONS, WEEKDAY_OPTIONS } from "./words.ts";

type Typed = z.input<typeof RuleInput>;

/** A school rule: what it keeps out, and on which days. */
export function RuleForm({ sheet }: { readonly sheet: Typed }) {
  const form = useForm<Typed, unknown, RuleInput>({
    resolver: zodResolver(RuleInput),
    defaultValues: sheet,
  });
  const { register, control, formState } = form;
  const { errors } = formState;
  // Rows have a key of their own: the form's usual "id" is the food's.
  const foods = useFieldArray({ control, name: "foods", keyName: "rowKey" });
  const exceptDays = useFieldArray({ control, name: "exceptDays" });
  const larder = useLarder();
  const { save, isSaving, problem } = useSaving(form, saveRuleAction);

  return (
    <form className={styles.form} onSubmit={save} noValidate>
      <Field
        label="The rule, as the school says it"
        {...register("name")}
        error={errors.name?.message}
      />
      <Ticks
        legend="Keeps out what is"
        options={TRAIT_OPTIONS}
        {...register("traits")}
        error={errors.traits?.message}
      />
      <Ticks
        legend="Keeps out what holds, in some makes too"
        options={ALLERGEN_OPTIONS}
        {...register("allergens")}
        error={errors.allergens?.message}
      />
      <div>
        <div className={styles.finder}>
          {" "}
          <FoodFinder
            larder={larder}
            onChoose={(food) => {
              if (foods.fields.some((one) => one.id === food.id)) return;
              foods.append({ id: FoodId.parse(food.id), name: food.name });
            }}
          />
        </div>{" "}
        <ul className={styles.rows} aria-label="Foods it keeps out">
          {foods.fields.map((food, index) => (
            <li key={food.rowKey}>
              <div>{food.name}</div>
              <button
                className="btn plain slim"
                type="button"
                aria-label={`Take out ${food.name}`}
                onClick={() => {
                  foods.remove(index);
                }}
              >
                Take out
              </button>
            </li>
          ))}
        </ul>
        {errors.foods?.message && <p className="rule-error">{errors.foods.message}</p>}
      </div>
      <h2>When it holds</h2>
      <Ticks
        legend="On these weekdays"
        hint="None ticked: every day."
        options={WEEKDAY_OPTIONS}
        {...register("weekdays")}
        error={errors.weekdays?.message}
      />
      <div className={styles.fields}>
        <Field
          label="From (optional)"
          type="date"
          {...register("from")}
          error={errors.from?.message}
        />
        <Field
          label="Until (optional)"
          type="date"
          {...register("to")}
          error={errors.to?.message}
        />
      </div>
      {exceptDays.fields.map((row, index) => (
        <div className="row" key={row.id}>
          <Field
            label={`Lifted on, day ${index + 1}`}
            type="date"
            {...register(`exceptDays.${index}.day`)}
            error={errors.exceptDays?.[index]?.day?.message}
          />
          <button
            className="btn plain slim"
            type="button"
            aria-label={`Take out lifted day ${index + 1}`}
            onClick={() => {
              exceptDays.remove(index);
            }}
          >
            Take out
          </button>
        </div>
      ))}
      <div className="row">
        <button
          className="btn plain"
          type="button"
          onClick={() => {
            exceptDays.append({ day: "" });
          }}
        >
          Add a day it is lifted
        </button>
        <Tick label="In force" {...register("isActive")} />
      </div>
      <FormEnd label="Save this rule" back="/bible#rules" isSaving={isSaving} problem={problem} />
    </form>
  );
}
