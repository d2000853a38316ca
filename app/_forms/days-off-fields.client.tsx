"use client";

import type { FieldError, FieldValues, Path, UseFormRegister } from "react-hook-form";
import { Field } from "./field.client.tsx";

/** What is asked of days off, in the start form and in the Series bible alike. */
export function DaysOffFields<Typed extends FieldValues>({
  register,
  at,
  errors,
}: {
  readonly register: UseFormRegister<Typed>;
  /** Where the row stands in its form: "daysOff.0". */
  readonly at: string;
  readonly errors: Partial<Record<"label" | "from" | "to", FieldError>> | undefined;
}) {
  const field = (name: string) => register(`${at}.${name}` as Path<Typed>);
  return (
    <>
      <Field
        label="What"
        placeholder="Winter break"
        {...field("label")}
        error={errors?.label?.message}
      />
      <Field label="First day" type="date" {...field("from")} error={errors?.from?.message} />
      <Field
        label="Last day (empty: one day)"
        type="date"
        {...field("to")}
        error={errors?.to?.message}
      />
    </>
  );
}
