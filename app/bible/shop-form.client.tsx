"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useForm } from "react-hook-form";
import type { z } from "zod";
import { Area } from "#app/_forms/area.client.tsx";
import { Field } from "#app/_forms/field.client.tsx";
import { FormEnd } from "#app/_forms/form-end.client.tsx";
import { Ticks } from "#app/_forms/ticks.client.tsx";
import { useSaving } from "#app/_forms/use-saving.client.ts";
import { ShopInput } from "#lib/use-cases/bible/shop-sheet.input.ts";
import { saveShopAction } from "./actions.ts";
import styles from "./bible.module.css";
import { WEEKDAY_OPTIONS } from "./words.ts";

type Typed = z.input<typeof ShopInput>;

/** A shop: when it is open, and its aisles in the order of walking. */
export function ShopForm({ sheet }: { readonly sheet: Typed }) {
  const form = useForm<Typed, unknown, ShopInput>({
    resolver: zodResolver(ShopInput),
    defaultValues: sheet,
  });
  const { register, formState } = form;
  const { errors } = formState;
  const { save, isSaving, problem } = useSaving(form, saveShopAction);
  return (
    <form className={styles.form} onSubmit={save} noValidate>
      <div className={styles.fields}>
        <Field label="Name" {...register("name")} error={errors.name?.message} />
        <Field
          label="Hours (optional)"
          placeholder="08:00–19:00"
          {...register("hours")}
          error={errors.hours?.message}
        />
      </div>
      <Ticks
        legend="Open on"
        options={WEEKDAY_OPTIONS}
        {...register("days")}
        error={errors.days?.message}
      />
      <Area
        label="Aisles, one a line, in the order you walk them"
        rows={6}
        {...register("aisles")}
        error={errors.aisles?.message}
      />
      <Area label="Note (optional)" rows={3} {...register("note")} error={errors.note?.message} />
      <FormEnd label="Save this shop" back="/bible#shops" isSaving={isSaving} problem={problem} />
    </form>
  );
}
