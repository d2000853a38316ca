"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useRouter } from "next/navigation";
import { useState } from "react";
import { useForm, useWatch } from "react-hook-form";

import { FoodInput, type FoodFields } from "#lib/use-cases/larder/food.input.ts";
import { Ticks } from "#app/_forms/ticks.client.tsx";
import { Tick } from "#app/_forms/tick.client.tsx";
import { Field } from "#app/_forms/field.client.tsx";
import { Choice } from "#app/_forms/choice.client.tsx";
import { showOutcome } from "#app/_forms/show-outcome.client.ts";
import { Area } from "#app/_forms/area.client.tsx";
import { saveFoodAction } from "./actions.ts";
import {
  ALLERGEN_OPTIONS,
  COLOUR_OPTIONS,
  FORM_OPTIONS,
  GROUP_OPTIONS,
  HOLDING_OPTIONS,
  MONTH_OPTIONS,
  PART_OPTIONS,
  PATTERN_OPTIONS,
  TRAIT_OPTIONS,
} from "./food-options.ts";
import { LabelReader } from "./label-reader.client.tsx";
import styles from "./larder.module.css";

const LIVES = [
  ["pantryDays", "Cupboard"],
  ["pantryOpenedDays", "Cupboard, opened"],
  ["fridgeDays", "Fridge"],
  ["fridgeOpenedDays", "Fridge, opened"],
  ["cutDays", "Cut"],
  ["preparedDays", "Cooked or mixed"],
  ["freezerDays", "Freezer"],
] as const;

/** All that is said of a food; what is typed stays until it is saved. */
export function FoodForm({
  standing,
  families,
  currency,
}: {
  readonly standing: FoodFields;
  readonly families: readonly { readonly id: string; readonly name: string }[];
  readonly currency: string;
}) {
  const router = useRouter();
  const [status, setStatus] = useState("");
  const { register, handleSubmit, setError, setValue, control, formState } = useForm<FoodFields>({
    resolver: zodResolver(FoodInput, undefined, { raw: true }),
    defaultValues: standing,
    // What the page reads anew (the revision, after a save or a merge) joins what is being typed.
    values: standing,
    resetOptions: { keepDirtyValues: true },
  });
  const { errors } = formState;
  const error = (name: keyof FoodFields): string | undefined => errors[name]?.message;
  const isNew = standing.id === "";
  const [name, allergens, maybe, ingredients] = useWatch({
    control,
    name: ["name", "allergens", "maybe", "ingredients"],
  });

  // The action checks what was typed itself, so it is handed on as it is.
  const save = handleSubmit(async (typed) => {
    const state = await saveFoodAction(typed).catch(() => undefined);
    if (!showOutcome(state, setError)) return;
    setStatus("Saved.");
    if (isNew && state?.kind === "saved" && state.href) router.push(state.href);
  });

  return (
    <form
      className={styles.form}
      onSubmit={(event) => void save(event)}
      onChange={() => {
        setStatus("");
      }}
      noValidate
    >
      <div className={styles.pair}>
        <Field label="Name" {...register("name")} error={error("name")} />
        <Area
          label="Other names"
          hint="One a line: nicknames too. A search finds it by any of them."
          {...register("aliases")}
          error={error("aliases")}
        />
      </div>
      <div className={styles.trio}>
        <Choice
          label="Family"
          options={[["", "choose …"], ...families.map(({ id, name }) => [id, name] as const)]}
          {...register("familyId")}
          error={error("familyId")}
        />
        <Field
          label="or a new family"
          {...register("newFamily")}
          hint="Foods of a family are kin for repeats and taste."
          error={error("newFamily")}
        />
        <Choice
          label="Group"
          options={GROUP_OPTIONS}
          {...register("group")}
          error={error("group")}
        />
      </div>
      <div className={styles.trio}>
        <Choice
          label="Usual part"
          options={PART_OPTIONS}
          {...register("part")}
          error={error("part")}
        />
        <Ticks legend="Also" options={PART_OPTIONS} {...register("otherParts")} />
      </div>
      <LabelReader
        words={`${name}\n${ingredients}`}
        ticks={{ allergens, maybe }}
        onTick={(ticks) => {
          setStatus("");
          setValue("allergens", ticks.allergens, { shouldDirty: true });
          setValue("maybe", ticks.maybe, { shouldDirty: true });
        }}
      />
      <Ticks
        legend="Allergens it holds"
        options={ALLERGEN_OPTIONS}
        {...register("allergens")}
        hint="Products and items inherit these. The label on the pack goes before this list."
      />
      <Ticks
        legend="In some makes: check the label"
        options={ALLERGEN_OPTIONS}
        {...register("maybe")}
      />
      <details className={styles.more}>
        <summary>How it looks: colours, motifs, pattern</summary>
        <div className={styles.trio}>
          <Choice
            label="Colour"
            options={COLOUR_OPTIONS}
            {...register("colour")}
            error={error("colour")}
          />
          <Choice
            label="Drawn pattern"
            options={PATTERN_OPTIONS}
            {...register("pattern")}
            error={error("pattern")}
          />
          <Field
            label="Motifs"
            hint="Words it evokes, parted by commas. Common practice."
            {...register("motifs")}
            error={error("motifs")}
          />
        </div>
        <Ticks legend="Other colours" options={COLOUR_OPTIONS} {...register("otherColours")} />
        <Tick
          label="Can be sliced, so it can carry a cutter shape (common practice)"
          {...register("sliceable")}
        />
      </details>
      <details className={styles.more}>
        <summary>Season, shelf lives and rest</summary>
        <Ticks
          legend="In season"
          options={MONTH_OPTIONS}
          hint="None ticked: all year."
          {...register("months")}
        />
        <div className={styles.lives}>
          {LIVES.map(([name, label]) => (
            <Field
              key={name}
              label={`${label}, days`}
              inputMode="numeric"
              {...register(name)}
              error={error(name)}
            />
          ))}
          <Field
            label="Rest, days"
            hint="Empty: the series’ rule."
            inputMode="numeric"
            {...register("restDays")}
            error={error("restDays")}
          />
        </div>
        <Tick label="A staple: no rest, such as water or a house dip" {...register("isStaple")} />
      </details>
      <details className={styles.more}>
        <summary>Weights and price</summary>
        <div className={styles.lives}>
          <Field
            label="A serving, grams"
            inputMode="decimal"
            {...register("servingGrams")}
            error={error("servingGrams")}
          />
          <Field
            label="A cup, grams"
            inputMode="decimal"
            {...register("gramsPerCup")}
            error={error("gramsPerCup")}
          />
          <Field
            label="Eaten share of what is bought"
            hint="0.9: a tenth is peel or core."
            inputMode="decimal"
            {...register("yieldFactor")}
            error={error("yieldFactor")}
          />
          <Field
            label={`A serving costs, ${currency}`}
            inputMode="decimal"
            {...register("servingMoney")}
            error={error("servingMoney")}
          />
          <Field
            label="Counted as"
            hint="slice, piece, clementine"
            {...register("countUnit")}
            error={error("countUnit")}
          />
          <Area
            label="What one weighs, grams"
            hint="One a line: slice 30"
            {...register("unitWeights")}
            error={error("unitWeights")}
          />
        </div>
      </details>
      <details className={styles.more}>
        <summary>Handling: traits, shape, temperature</summary>
        <div className={styles.trio}>
          <Choice
            label="Shape, for choking guidance"
            options={FORM_OPTIONS}
            {...register("form")}
            error={error("form")}
          />
          <Choice
            label="Must be kept"
            options={HOLDING_OPTIONS}
            {...register("holding")}
            error={error("holding")}
          />
        </div>
        <Ticks legend="Traits" options={TRAIT_OPTIONS} {...register("traits")} />
      </details>
      <details className={styles.more} open={standing.ingredients !== "" || undefined}>
        <summary>A house recipe: what goes into it</summary>
        <Area
          label="Ingredients of a house recipe"
          hint="One a line: 200 g flour. A line such as “Makes 16 flatbreads” says the yield. They go into the recipe file on the Copy desk."
          {...register("ingredients")}
          error={error("ingredients")}
        />
      </details>
      {Object.keys(errors).length > 0 && !errors.root && (
        <p className="rule-error" role="alert">
          Look at the marked fields; some may be folded away.
        </p>
      )}
      {errors.root && (
        <p className="rule-error" role="alert">
          {errors.root.message}
        </p>
      )}
      <div className="row">
        <button className="btn" type="submit" disabled={formState.isSubmitting}>
          {formState.isSubmitting ? "Saving …" : isNew ? "Add this food" : "Save this food"}
        </button>
        <span role="status">{status}</span>
      </div>
    </form>
  );
}
