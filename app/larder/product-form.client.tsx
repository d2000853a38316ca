"use client";

import { zodResolver } from "@hookform/resolvers/zod";
import { useState } from "react";
import { useForm, useWatch } from "react-hook-form";
import {
  PRODUCT_STATUSES,
  ProductInput,
  PROVENANCES,
  type ProductFields,
} from "#lib/use-cases/larder/product.input.ts";
import { Ticks } from "#app/_forms/ticks.client.tsx";
import { Tick } from "#app/_forms/tick.client.tsx";
import { Field } from "#app/_forms/field.client.tsx";
import { Choice } from "#app/_forms/choice.client.tsx";
import { showOutcome } from "#app/_forms/show-outcome.client.ts";
import { saveProductAction } from "./actions.ts";
import { ALLERGEN_OPTIONS, MONTH_OPTIONS, TRAIT_OPTIONS } from "./food-options.ts";
import { LabelReader } from "./label-reader.client.tsx";
import styles from "./larder.module.css";

const PROVENANCE_OPTIONS = PROVENANCES.map((one) => [one, one] as const);
const STATUS_OPTIONS = PRODUCT_STATUSES.map(
  (status) => [status, status === "out" ? "out of stock" : status] as const,
);

/** A food as sold: pack, shops, prices, how it came into the house. */
export function ProductForm({
  standing,
  shops,
  currency,
}: {
  readonly standing: ProductFields;
  readonly shops: readonly { readonly id: string; readonly name: string }[];
  readonly currency: string;
}) {
  const [status, setStatus] = useState("");
  const { register, handleSubmit, setError, setValue, reset, control, formState } =
    useForm<ProductFields>({
      resolver: zodResolver(ProductInput, undefined, { raw: true }),
      defaultValues: standing,
      values: standing,
      resetOptions: { keepDirtyValues: true },
    });
  const { errors } = formState;
  const isNew = standing.id === "";
  const [name, allergens, maybe] = useWatch({ control, name: ["name", "allergens", "maybe"] });
  const mustTell = useWatch({ control, name: "provenance" }) !== "bought";

  const save = handleSubmit(async (typed) => {
    const state = await saveProductAction(typed).catch(() => undefined);
    if (!showOutcome(state, setError)) return;
    setStatus(isNew ? "Added." : "Saved.");
    // A price joins the history: its field is free for the next one.
    reset(isNew ? standing : { ...typed, shops: typed.shops.map((s) => ({ ...s, price: "" })) });
  });

  return (
    <form
      className={styles.form}
      onSubmit={(event) => void save(event)}
      onChange={() => {
        setStatus("");
      }}
      noValidate
    >
      <div className={styles.trio}>
        <Field label="Product name" {...register("name")} error={errors.name?.message} />
        <Field label="Flavour" {...register("flavour")} error={errors.flavour?.message} />
        <Field
          label="A pack, grams"
          inputMode="decimal"
          {...register("packGrams")}
          error={errors.packGrams?.message}
        />
      </div>
      <div className={styles.trio}>
        <Choice
          label="How it came"
          options={PROVENANCE_OPTIONS}
          hint="All but “bought” is told at the start of every text."
          {...register("provenance")}
          error={errors.provenance?.message}
        />
        {mustTell && (
          <Field
            label="What viewers are told"
            {...register("disclosure")}
            error={errors.disclosure?.message}
          />
        )}
        <Choice
          label="In the shops"
          options={STATUS_OPTIONS}
          {...register("status")}
          error={errors.status?.message}
        />
      </div>
      {shops.length > 0 && (
        <fieldset className={styles.sold}>
          <legend className="label">Sold at</legend>
          {shops.map((shop, index) => (
            <div className={styles.shop} key={shop.id}>
              <Tick label={shop.name} {...register(`shops.${index}.isSold`)} />
              <input
                className="field"
                placeholder="aisle"
                aria-label={`Aisle at ${shop.name}`}
                {...register(`shops.${index}.aisle`)}
              />
              <input
                className="field"
                inputMode="decimal"
                placeholder={`price today, ${currency}`}
                aria-label={`Price at ${shop.name}, ${currency}`}
                aria-invalid={errors.shops?.[index]?.price ? true : undefined}
                {...register(`shops.${index}.price`)}
              />
              <Tick
                label="only there"
                aria-label={`Only at ${shop.name}`}
                {...register(`shops.${index}.onlyThere`)}
              />
              {errors.shops?.[index]?.price && (
                <p className="rule-error">{errors.shops[index].price.message}</p>
              )}
            </div>
          ))}
          <Field
            label="Day of the prices"
            type="date"
            hint="Empty: today."
            {...register("priceOn")}
            error={errors.priceOn?.message}
          />
        </fieldset>
      )}
      <details className={styles.more}>
        <summary>What its label adds, and its season</summary>
        <LabelReader
          words={name}
          ticks={{ allergens, maybe }}
          onTick={(ticks) => {
            setStatus("");
            setValue("allergens", ticks.allergens, { shouldDirty: true });
            setValue("maybe", ticks.maybe, { shouldDirty: true });
          }}
        />
        <Ticks
          legend="The label names"
          options={ALLERGEN_OPTIONS}
          hint="Beside what the food holds anyway."
          {...register("allergens")}
        />
        <Ticks
          legend="The label says “may contain”"
          options={ALLERGEN_OPTIONS}
          {...register("maybe")}
        />
        <Ticks legend="Traits" options={TRAIT_OPTIONS} {...register("traits")} />
        <Ticks
          legend="In the shops in"
          options={MONTH_OPTIONS}
          hint="None ticked: all year."
          {...register("months")}
        />
      </details>
      {errors.root && (
        <p className="rule-error" role="alert">
          {errors.root.message}
        </p>
      )}
      <div className="row">
        <button className="btn plain" type="submit" disabled={formState.isSubmitting}>
          {formState.isSubmitting ? "Saving …" : isNew ? "Add this product" : "Save this product"}
        </button>
        <span role="status">{status}</span>
      </div>
    </form>
  );
}
