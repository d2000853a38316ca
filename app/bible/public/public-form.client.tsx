"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useForm } from "react-hook-form";
import type { z } from "zod";
import { Area } from "#app/_forms/area.client.tsx";
import { Field } from "#app/_forms/field.client.tsx";
import { FormEnd } from "#app/_forms/form-end.client.tsx";
import { useSaving } from "#app/_forms/use-saving.client.ts";
import { PublicInput } from "#lib/use-cases/bible/settings-sheets.input.ts";
import { savePublicAction } from "../actions.ts";
import styles from "../bible.module.css";

type Typed = z.input<typeof PublicInput>;

/** Words that never leave, the user's note on the law, and the lengths the channel takes. */
export function PublicForm({ sheet }: { readonly sheet: Typed }) {
  const form = useForm<Typed, unknown, PublicInput>({
    resolver: zodResolver(PublicInput),
    defaultValues: sheet,
  });
  const { register, formState } = form;
  const { errors } = formState;
  const { save, isSaving, problem } = useSaving(form, savePublicAction);
  const count = (name: "titleMax" | "descriptionMax" | "firstLinesMax", label: string) => (
    <Field
      label={label}
      type="number"
      {...register(name, { valueAsNumber: true })}
      error={errors[name]?.message}
    />
  );
  return (
    <form className={styles.form} onSubmit={save} noValidate>
      <Area
        label="Words that never leave, one a line"
        hint="The school, the street, the town, a surname. The children’s private names stay on this list by themselves."
        rows={8}
        {...register("privateWords")}
        error={errors.privateWords?.message}
      />
      <Area
        label="What the law here says about children on screen, as I noted it"
        hint="Your own note: hours, permits, money set aside. Noonbook gives no legal advice; ask where you live."
        rows={6}
        {...register("lawNote")}
        error={errors.lawNote?.message}
      />
      <h2>Lengths the channel takes, in letters</h2>
      <div className={styles.fields}>
        {count("titleMax", "A title, at most")}
        {count("descriptionMax", "A description, at most")}
        {count("firstLinesMax", "First lines seen before the rest unfolds")}
      </div>
      <FormEnd
        label="Save what may leave"
        back="/bible#public"
        isSaving={isSaving}
        problem={problem}
      />
    </form>
  );
}
