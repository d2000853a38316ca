"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useForm } from "react-hook-form";
import { COLOURS, TRICK_KINDS } from "#lib/catalog/index.ts";
import { TrickInput, type TrickFields } from "#lib/use-cases/larder/trick.input.ts";
import { Choice } from "#app/_forms/choice.client.tsx";
import { Field } from "#app/_forms/field.client.tsx";
import { FormEnd } from "#app/_forms/form-end.client.tsx";
import { Tick } from "#app/_forms/tick.client.tsx";
import { Ticks } from "#app/_forms/ticks.client.tsx";
import { useSaving } from "#app/_forms/use-saving.client.ts";
import { saveTrickAction } from "../actions.ts";
import styles from "../larder.module.css";

const KINDS = TRICK_KINDS.map((kind) => [kind, kind] as const);
const COLOUR_OPTIONS = COLOURS.map((colour) => [colour, colour] as const);

/** A cut, a cutter shape, a pick, a container or a garnish; added or edited. */
export function TrickForm({ standing }: { readonly standing: TrickFields }) {
  const form = useForm<TrickFields, unknown, TrickInput>({
    resolver: zodResolver(TrickInput),
    defaultValues: standing,
  });
  const { register, formState } = form;
  const { errors } = formState;
  const { save, isSaving, problem } = useSaving(form, saveTrickAction);
  return (
    <form className={styles.form} onSubmit={save} noValidate>
      <Field label="Name" {...register("name")} error={errors.name?.message} />
      <Choice label="Kind" options={KINDS} {...register("kind")} error={errors.kind?.message} />
      <Field
        label="Motifs"
        hint="Words it evokes, parted by commas: this is how a plain food fits a theme. Common practice."
        {...register("motifs")}
        error={errors.motifs?.message}
      />
      <Field
        label="Minutes it adds to a family batch"
        inputMode="decimal"
        {...register("minutes")}
        error={errors.minutes?.message}
      />
      <Ticks legend="Colours" options={COLOUR_OPTIONS} {...register("colours")} />
      <Tick label="Only for what can be sliced" {...register("needsSliceable")} />
      <FormEnd
        label={standing.id === "" ? "Add this trick" : "Save this trick"}
        back="/larder/tricks"
        isSaving={isSaving}
        problem={problem}
      />
    </form>
  );
}
