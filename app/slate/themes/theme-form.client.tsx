"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import Link from "next/link";
import { useForm, useWatch } from "react-hook-form";
import type { z } from "zod";
import { Area } from "#app/_forms/area.client.tsx";
import { Choice } from "#app/_forms/choice.client.tsx";
import { Field } from "#app/_forms/field.client.tsx";
import { FormEnd } from "#app/_forms/form-end.client.tsx";
import { Ticks } from "#app/_forms/ticks.client.tsx";
import { useSaving } from "#app/_forms/use-saving.client.ts";
import bible from "#app/bible/bible.module.css";
import { COLOURS } from "#lib/catalog/index.ts";
import { EventWeeks, MONTHS } from "#lib/calendar/index.ts";
import { FEASTS, ThemeInput } from "#lib/use-cases/themes/theme.input.ts";
import { saveThemeAction } from "./actions.ts";
import { feastWords, weeksWords } from "./season-words.ts";

type Typed = z.input<typeof ThemeInput>;

/** A theme: its motifs, palette, season and rest; `events` are the days off a season may go by. */
export function ThemeForm({
  sheet,
  events,
}: {
  readonly sheet: Typed;
  readonly events: readonly string[];
}) {
  const form = useForm<Typed, unknown, ThemeInput>({
    resolver: zodResolver(ThemeInput),
    defaultValues: sheet,
  });
  const { register, control, formState } = form;
  const { errors } = formState;
  const season = useWatch({ control, name: "season" });
  const { save, isSaving, problem } = useSaving(form, saveThemeAction);
  const number = (name: "date" | "before" | "after", label: string) => (
    <Field
      label={label}
      type="number"
      {...register(name, { valueAsNumber: true })}
      error={errors[name]?.message}
    />
  );
  return (
    <form className={bible.form} onSubmit={save} noValidate>
      <div className={bible.fields}>
        <Field label="Name" {...register("name")} error={errors.name?.message} />
        <Field
          label="Rest in days (empty: the series’ own)"
          inputMode="numeric"
          {...register("restDays")}
          error={errors.restDays?.message}
        />
      </div>
      <Area
        label="Motifs, one a line"
        hint="A food or trick with the same motif fits the theme."
        {...register("motifs")}
        error={errors.motifs?.message}
      />
      <Ticks
        legend="Palette"
        options={COLOURS.map((colour) => [colour, colour] as const)}
        {...register("palette")}
        error={errors.palette?.message}
      />
      <div className={bible.fields}>
        <Choice label="Season" options={SEASONS} {...register("season")} />
        {season === "feast" && (
          <Choice
            label="Feast"
            options={FEASTS.map((feast) => [feast, feastWords(feast)] as const)}
            {...register("feast")}
          />
        )}
        {season === "event" && (
          <>
            <Choice
              label="Which weeks"
              options={EventWeeks.options.map((weeks) => [weeks, weeksWords(weeks)] as const)}
              {...register("weeks")}
            />
            <Choice
              label="Days off"
              hint="A break of the same name next year counts as well."
              options={[["", "Choose"], ...events.map((name) => [name, name] as const)]}
              {...register("event")}
              error={errors.event?.message}
            />
          </>
        )}
        {season === "date" && (
          <>
            {number("date", "Day of the month")}
            <Choice
              label="Month"
              options={MONTHS.map((name, index) => [String(index + 1), name] as const)}
              {...register("month", { valueAsNumber: true })}
            />
          </>
        )}
        {(season === "date" || season === "feast") && (
          <>
            {number("before", "Days before it")}
            {number("after", "Days after it")}
          </>
        )}
      </div>
      {season === "event" && events.length === 0 && (
        <p className="quiet">
          No days off are on record: enter them under{" "}
          <Link href="/bible/days">the school days</Link> of the series bible first.
        </p>
      )}
      {season === "months" && (
        <Ticks
          legend="Months"
          options={MONTHS.map((name, index) => [String(index + 1), name] as const)}
          {...register("months")}
          error={errors.months?.message}
        />
      )}
      <Area label="Note" rows={3} {...register("note")} error={errors.note?.message} />
      <FormEnd label="Save this theme" back="/slate/themes" isSaving={isSaving} problem={problem} />
    </form>
  );
}

const SEASONS = [
  ["always", "All year"],
  ["months", "Some months"],
  ["date", "Around a date"],
  ["feast", "Around a moving feast"],
  ["event", "By the school’s days off"],
] as const;
