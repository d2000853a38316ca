"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useRouter } from "next/navigation";
import { useFieldArray, useForm } from "react-hook-form";
import type { z } from "zod";
import { Field } from "#app/_forms/field.client.tsx";
import { StartSeriesInput } from "#lib/use-cases/start-series.input.ts";
import { startSeriesAction } from "./actions.ts";
import styles from "./welcome.module.css";

type Typed = z.input<typeof StartSeriesInput>;
const NEW_CHILD = { privateName: "", onScreenName: "", birthMonth: "", allergens: [] };

/** Series name, departure and children; what is typed stays until it is saved. */
export function StartForm() {
  const router = useRouter();
  const { register, control, handleSubmit, setError, formState } = useForm<
    Typed,
    unknown,
    StartSeriesInput
  >({
    resolver: zodResolver(StartSeriesInput),
    defaultValues: { name: "", departure: "07:50", children: [] },
  });
  const children = useFieldArray({ control, name: "children" });

  const save = handleSubmit(async (input) => {
    const state = await startSeriesAction(input).catch(() => undefined);
    if (!state) {
      setError("root", {
        message: "Noonbook did not answer. What you typed is still here: try again.",
      });
    } else if (state.kind === "saved") {
      router.push(state.href ?? "/slate");
      router.refresh();
    } else if (state.kind === "refused") {
      setError("root", { message: state.message });
    } else {
      for (const [field, message] of Object.entries(state.fields)) {
        setError(field as "name", { message });
      }
    }
  });

  return (
    <form className={styles.form} onSubmit={(event) => void save(event)} noValidate>
      <Field label="Series name" {...register("name")} error={formState.errors.name?.message} />
      <Field
        label="Out of the door at"
        type="time"
        {...register("departure")}
        error={formState.errors.departure?.message}
      />
      {children.fields.map((child, index) => {
        const errors = formState.errors.children?.[index];
        return (
          <fieldset className={styles.child} key={child.id}>
            <legend>Child {index + 1}</legend>
            <div className={styles.two}>
              <Field
                label="Private name"
                hint="Never leaves the house."
                {...register(`children.${index}.privateName`)}
                error={errors?.privateName?.message}
              />
              <Field
                label="On-screen name"
                hint="The only name anything public uses."
                {...register(`children.${index}.onScreenName`)}
                error={errors?.onScreenName?.message}
              />
              <Field
                label="Born in (optional)"
                type="month"
                {...register(`children.${index}.birthMonth`)}
                error={errors?.birthMonth?.message}
              />
            </div>
            <button className="btn plain slim" type="button" onClick={() => children.remove(index)}>
              Take child {index + 1} out
            </button>
          </fieldset>
        );
      })}
      <div className="row">
        <button className="btn plain" type="button" onClick={() => children.append(NEW_CHILD)}>
          Add a child
        </button>
        <button className="btn" type="submit" disabled={formState.isSubmitting}>
          {formState.isSubmitting ? "Saving …" : "Start the series"}
        </button>
      </div>
      {formState.errors.root && (
        <p className="rule-error" role="alert">
          {formState.errors.root.message}
        </p>
      )}
    </form>
  );
}
