"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useId } from "react";
import { useForm } from "react-hook-form";
import type { z } from "zod";
import { Field } from "#app/_forms/field.client.tsx";
import { FormEnd } from "#app/_forms/form-end.client.tsx";
import { Tick } from "#app/_forms/tick.client.tsx";
import { useSaving } from "#app/_forms/use-saving.client.ts";
import { MONTHS } from "#lib/calendar/index.ts";
import { BALANCE_SCHEMES, schemeWord } from "#lib/safety/index.ts";
import { ChecksInput } from "#lib/use-cases/bible/checks-sheet.input.ts";
import styles from "../bible.module.css";
import { saveChecksAction } from "./actions.ts";

type Typed = z.input<typeof ChecksInput>;

/** How lunch is carried, what one thermometer reading said, the weather, and the scheme of amounts. */
export function ChecksForm({ sheet }: { readonly sheet: Typed }) {
  const id = useId();
  const form = useForm<Typed, unknown, ChecksInput>({
    resolver: zodResolver(ChecksInput),
    defaultValues: sheet,
  });
  const { register, formState } = form;
  const { errors } = formState;
  const { save, isSaving, problem } = useSaving(form, saveChecksAction);
  const whole = (name: "packs" | "packGrams" | "jarMl" | "lidMinutes", label: string) => (
    <Field
      label={label}
      type="number"
      {...register(name, { valueAsNumber: true })}
      error={errors[name]?.message}
    />
  );
  const decimal = (name: "fridgeC" | "fillC" | "indoorC", label: string) => (
    <Field label={label} inputMode="decimal" {...register(name)} error={errors[name]?.message} />
  );
  const reading = (name: "bagReading" | "jarReading", what: string) => (
    <fieldset className={styles.reading}>
      <legend>One reading of {what} (empty: none taken)</legend>
      <p className="small quiet">
        Fill it with water, read the thermometer, close it, and read again some hours later.
      </p>
      <div className={styles.fields}>
        {READING.map(([key, label]) => (
          <Field
            key={key}
            label={label}
            inputMode="decimal"
            {...register(`${name}.${key}`)}
            error={errors[name]?.[key]?.message}
          />
        ))}
      </div>
    </fieldset>
  );
  return (
    <form className={styles.form} onSubmit={save} noValidate>
      <h2>The bag or box</h2>
      <div className={styles.fields}>
        <div>
          <label htmlFor={`${id}-bag`}>It is</label>
          <select className="field" id={`${id}-bag`} {...register("bag")}>
            <option value="paper">paper or cloth</option>
            <option value="soft">a soft insulated bag</option>
            <option value="hard">a hard insulated box</option>
          </select>
        </div>
        {whole("packs", "Cold packs in it")}
        {whole("packGrams", "Grams of each pack")}
        {decimal("fridgeC", "Fridge, °C")}
      </div>
      <div className="row">
        <Tick label="The packed box stands in the fridge overnight" {...register("isPrechilled")} />
        <Tick label="The drink goes in frozen" {...register("freezesDrink")} />
      </div>
      {reading("bagReading", "the bag without packs")}
      <h2>The hot jar</h2>
      <div className={styles.fields}>
        {whole("jarMl", "It holds, mL")}
        {decimal("fillC", "Food goes in at, °C")}
      </div>
      <div className="row">
        <Tick label="Boiling water stands in it first" {...register("isJarPreheated")} />
      </div>
      {reading("jarReading", "the jar")}
      <h2>Until lunch</h2>
      <div className={styles.fields}>
        <div>
          <label htmlFor={`${id}-waits`}>The bag waits</label>
          <select className="field" id={`${id}-waits`} {...register("waits")}>
            <option value="indoors">indoors</option>
            <option value="outdoors">outdoors</option>
          </select>
        </div>
        {decimal("indoorC", "Room where it waits, °C")}
        {whole("lidMinutes", "Minutes from lid to door")}
      </div>
      <h2>Outdoors, mean of each month in °C</h2>
      <div className={styles.months}>
        {MONTHS.map((month, index) => (
          <Field
            key={month}
            label={month}
            inputMode="decimal"
            {...register(`climate.${index}`)}
            error={errors.climate?.[index]?.message}
          />
        ))}
      </div>
      <h2>Balance</h2>
      <div>
        <label htmlFor={`${id}-scheme`}>Amounts are counted by</label>
        <select className="field" id={`${id}-scheme`} {...register("balanceScheme")}>
          {BALANCE_SCHEMES.map((scheme) => (
            <option key={scheme} value={scheme}>
              {schemeWord(scheme)}
            </option>
          ))}
        </select>
        <p className="small quiet">
          Guidance with its source beside it. It says nothing of a child, a parent or a weight.
        </p>
      </div>
      <FormEnd label="Save the checks" back="/bible#checks" isSaving={isSaving} problem={problem} />
    </form>
  );
}

const READING = [
  ["waterMl", "Water, mL"],
  ["startC", "First reading, °C"],
  ["hours", "Hours between"],
  ["readC", "Second reading, °C"],
  ["roomC", "Room, °C"],
] as const;
