"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useForm } from "react-hook-form";
import { FamilyInput, type FamilyFields } from "#lib/use-cases/larder/family.input.ts";
import { Field } from "#app/_forms/field.client.tsx";
import { StayEnd } from "#app/_forms/stay-end.client.tsx";
import { useSaving } from "#app/_forms/use-saving.client.ts";
import { saveFamilyAction } from "../actions.ts";
import styles from "../larder.module.css";

/** What a family of foods is called, and its own rest. */
export function FamilyForm({ standing }: { readonly standing: FamilyFields }) {
  const form = useForm<FamilyFields, unknown, FamilyInput>({
    resolver: zodResolver(FamilyInput),
    defaultValues: standing,
    values: standing,
    resetOptions: { keepDirtyValues: true },
  });
  const { register, formState } = form;
  const { save, isSaving, problem, status, unsay } = useSaving(form, saveFamilyAction);
  return (
    <form className={styles.form} onSubmit={save} onChange={unsay} noValidate>
      <Field label="Family name" {...register("name")} error={formState.errors.name?.message} />
      <Field
        label="Rest of the whole family, days"
        hint="Empty: the series’ rule for families."
        inputMode="numeric"
        {...register("restDays")}
        error={formState.errors.restDays?.message}
      />
      <StayEnd label="Save the family" isPlain {...{ isSaving, status, problem }} />
    </form>
  );
}
