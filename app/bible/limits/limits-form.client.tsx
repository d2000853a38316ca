"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useForm } from "react-hook-form";
import type { z } from "zod";
import { Field } from "#app/_forms/field.client.tsx";
import { FormEnd } from "#app/_forms/form-end.client.tsx";
import { Tick } from "#app/_forms/tick.client.tsx";
import { useSaving } from "#app/_forms/use-saving.client.ts";
import { LimitsInput } from "#lib/use-cases/bible/settings-sheets.input.ts";
import { saveLimitsAction } from "../actions.ts";
import styles from "../bible.module.css";

type Typed = z.input<typeof LimitsInput>;

/** Time, money, hands and appliances there are, and how fast something may come back. */
export function LimitsForm({ sheet }: { readonly sheet: Typed }) {
  const form = useForm<Typed, unknown, LimitsInput>({
    resolver: zodResolver(LimitsInput),
    defaultValues: sheet,
  });
  const { register, formState } = form;
  const { errors } = formState;
  const { save, isSaving, problem } = useSaving(form, saveLimitsAction);
  const time = (name: "morningFrom" | "eveningFrom" | "bedtime", label: string) => (
    <Field label={label} type="time" {...register(name)} error={errors[name]?.message} />
  );
  const count = (name: Counted, label: string) => (
    <Field
      label={label}
      type="number"
      {...register(name, { valueAsNumber: true })}
      error={errors[name]?.message}
    />
  );
  return (
    <form className={styles.form} onSubmit={save} noValidate>
      <h2>Time and hands</h2>
      <div className={styles.fields}>
        {count("morningMinutes", "Hands-on minutes on a school morning")}
        {time("morningFrom", "Kitchen opens in the morning at")}
        {time("eveningFrom", "Evening prep may begin at")}
        {time("bedtime", "Evening prep ends by")}
        {count("cooks", "Cooks")}
      </div>
      <h2>Appliances</h2>
      <div className={styles.fields}>
        {Object.keys(sheet.appliances).map((appliance) => (
          <Field
            key={appliance}
            label={appliance.replace("-", " ").replace(/^./, (letter) => letter.toUpperCase())}
            type="number"
            hint={appliance === "hob" ? "Rings that may be on at once." : undefined}
            {...register(`appliances.${appliance}`, { valueAsNumber: true })}
            error={errors.appliances?.[appliance]?.message}
          />
        ))}
      </div>
      <h2>Money</h2>
      <div className={styles.fields}>
        <Field label="Currency" {...register("currency")} error={errors.currency?.message} />
        <Field
          label="Budget a week (empty: none)"
          inputMode="decimal"
          {...register("weekBudget")}
          error={errors.weekBudget?.message}
        />
      </div>
      <h2>New foods</h2>
      <div className={styles.fields}>
        {count("newFoodsPerLunchMax", "In one lunch at most")}
        {count("newFoodsPerWeekMax", "In one week at most")}
      </div>
      <div className="row">
        <Tick label="Discoveries are wanted" {...register("wantsDiscoveries")} />
      </div>
      <h2>Rest before it comes back, in days</h2>
      <div className={styles.fields}>
        {count("themeRestDays", "A theme")}
        {count("productRestDays", "A product")}
        {count("foodRestDays", "A food")}
        {count("familyRestDays", "A family of foods")}
        {count("trickRestDays", "A trick")}
      </div>
      <FormEnd label="Save the limits" back="/bible#limits" isSaving={isSaving} problem={problem} />
    </form>
  );
}

type Counted =
  | "morningMinutes"
  | "cooks"
  | "newFoodsPerLunchMax"
  | "newFoodsPerWeekMax"
  | "themeRestDays"
  | "productRestDays"
  | "foodRestDays"
  | "familyRestDays"
  | "trickRestDays";
