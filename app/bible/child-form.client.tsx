"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useFieldArray, useForm, type FieldErrors, type UseFormRegister } from "react-hook-form";
import type { z } from "zod";
import { Choice } from "#app/_forms/choice.client.tsx";
import { Field } from "#app/_forms/field.client.tsx";
import { FormEnd } from "#app/_forms/form-end.client.tsx";
import { useLarder } from "#app/_forms/use-larder.client.ts";
import { useSaving } from "#app/_forms/use-saving.client.ts";
import { FoodFinder } from "#app/slate/food-finder.client.tsx";
import { ChildInput } from "#lib/use-cases/bible/child-sheet.input.ts";
import { saveChildAction } from "./actions.ts";
import styles from "./bible.module.css";
import { ALLERGEN_OPTIONS, GLUTEN_CEREALS, SEVERITY_OPTIONS } from "./words.ts";

type Typed = z.input<typeof ChildInput>;
type Options = readonly (readonly [value: string, words: string])[];

/** A child's names, portion and avoidances; what is typed stays until it is saved. */
export function ChildForm({
  sheet,
  families,
}: {
  readonly sheet: Typed;
  readonly families: Options;
}) {
  const form = useForm<Typed, unknown, ChildInput>({
    resolver: zodResolver(ChildInput),
    defaultValues: sheet,
  });
  const { register, control, formState } = form;
  const { errors } = formState;
  const avoidances = useFieldArray({ control, name: "avoidances" });
  const larder = useLarder();
  const { save, isSaving, problem } = useSaving(form, saveChildAction);
  const addAllergen = (what: string): void => {
    avoidances.append({ kind: "allergen", what, severity: "allergy", note: "", label: "" });
  };

  return (
    <form className={styles.form} onSubmit={save} noValidate>
      <div className={styles.fields}>
        <Field
          label="Private name"
          hint="Never leaves the house."
          {...register("privateName")}
          error={errors.privateName?.message}
        />
        <Field
          label="On-screen name"
          hint="The only name anything public uses."
          {...register("onScreenName")}
          error={errors.onScreenName?.message}
        />
        <Field
          label="Born in (optional)"
          type="month"
          placeholder="2019-04"
          hint="Cautions about choking shapes and the faces go by age."
          {...register("birthMonth")}
          error={errors.birthMonth?.message}
        />
        <Field
          label="Portion factor"
          type="number"
          step="0.05"
          hint="1 is the portion that amounts are written for."
          {...register("portionFactor", { valueAsNumber: true })}
          error={errors.portionFactor?.message}
        />
        <Choice
          label="Faces on the verdict page"
          options={FACES}
          {...register("facePoints")}
          error={errors.facePoints?.message}
        />
      </div>
      <h2>What this child avoids</h2>
      <p className={styles.caution}>
        The two kinds of allergy count foods that hold it in some makes as well. “Avoid” keeps what
        surely holds it out of the plan; “would rather not” is only a hint. Noonbook knows what
        stands in its Larder and no more: the label in your hand, the child’s doctor and the school
        decide.
      </p>
      <div>
        {avoidances.fields.map((row, index) => (
          <div className={styles.line} key={row.id}>
            <What row={row} index={index} register={register} errors={errors} families={families} />
            <Choice
              label="How serious"
              options={SEVERITY_OPTIONS}
              {...register(`avoidances.${index}.severity`)}
              error={errors.avoidances?.[index]?.severity?.message}
            />
            <Field
              label="Note (optional)"
              {...register(`avoidances.${index}.note`)}
              error={errors.avoidances?.[index]?.note?.message}
            />
            <button
              className="btn plain slim"
              type="button"
              aria-label={`Take out avoidance ${index + 1}`}
              onClick={() => {
                avoidances.remove(index);
              }}
            >
              Take out
            </button>
          </div>
        ))}
        {avoidances.fields.length === 0 && <p className="quiet">Nothing on record.</p>}
      </div>
      <div className="row">
        <button
          className="btn plain"
          type="button"
          onClick={() => {
            addAllergen("");
          }}
        >
          Add an allergen
        </button>
        <button
          className="btn plain"
          type="button"
          onClick={() => {
            GLUTEN_CEREALS.forEach(addAllergen);
          }}
        >
          Add the gluten cereals
        </button>
        <button
          className="btn plain"
          type="button"
          onClick={() => {
            avoidances.append({ kind: "family", what: "", severity: "avoid", note: "", label: "" });
          }}
        >
          Add a family of foods
        </button>
      </div>
      <div className={styles.finder}>
        {" "}
        <FoodFinder
          larder={larder}
          onChoose={(food) => {
            avoidances.append({
              ...{ kind: "food", what: food.id, label: food.name },
              ...{ severity: "avoid", note: "" },
            });
          }}
        />
      </div>{" "}
      <FormEnd
        label="Save this child"
        back="/bible#children"
        isSaving={isSaving}
        problem={problem}
      />
    </form>
  );
}

const FACES: Options = [
  ["", "By age"],
  ["3", "3 faces"],
  ["5", "5 faces"],
  ["7", "7 faces"],
];

function What({
  row,
  index,
  register,
  errors,
  families,
}: {
  readonly row: Typed["avoidances"][number];
  readonly index: number;
  readonly register: UseFormRegister<Typed>;
  readonly errors: FieldErrors<Typed>;
  readonly families: Options;
}) {
  const error = errors.avoidances?.[index]?.what?.message;
  if (row.kind === "food") {
    return (
      <div>
        <span className="label">Food</span>
        <span className={styles.food}>{row.label}</span>
        {error && <p className="rule-error">{error}</p>}
      </div>
    );
  }
  const isAllergen = row.kind === "allergen";
  return (
    <Choice
      label={isAllergen ? "Allergen" : "Family of foods"}
      options={[["", "Choose …"], ...(isAllergen ? ALLERGEN_OPTIONS : families)]}
      {...register(`avoidances.${index}.what`)}
      error={error}
    />
  );
}
