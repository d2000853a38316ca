"use client";

import { useState } from "react";
import type { ParView } from "#lib/use-cases/errands/load-stock.ts";
import { Field } from "#app/_forms/field.client.tsx";
import { saveParAction } from "./actions.ts";
import { FoodField } from "./food-field.client.tsx";
import { numberTyped } from "./numbers.ts";
import { useStockChange } from "./use-stock-change.client.ts";
import styles from "./stock.module.css";

/** The level of a staple: a known one, or a new one. */
export function ParForm({ par }: { readonly par?: ParView }) {
  const { send, status, problems } = useStockChange();
  const [food, setFood] = useState("");
  const [typed, setTyped] = useState({
    gramsPerDay: par ? String(par.gramsPerDay) : "",
    leadDays: par ? String(par.leadDays) : "1",
    reserveGrams: par ? String(par.reserveGrams) : "0",
  });
  const save = (own: Partial<Record<keyof typeof typed, string>> = {}): void => {
    const all = { ...typed, ...own };
    const levels = {
      gramsPerDay: numberTyped(all.gramsPerDay),
      leadDays: numberTyped(all.leadDays),
      reserveGrams: numberTyped(all.reserveGrams),
    };
    void send(saveParAction({ food: par?.foodId ?? food, ...levels }));
  };
  const number = (name: keyof typeof typed, label: string) => (
    <Field
      label={label}
      inputMode="decimal"
      value={typed[name]}
      error={problems[name]}
      onChange={(event) => {
        setTyped((before) => ({ ...before, [name]: event.target.value }));
      }}
    />
  );
  return (
    <form
      className={styles.form}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        save();
      }}
    >
      {!par && (
        <FoodField
          label="Food"
          value={food}
          error={problems["food"]}
          onChange={(event) => {
            setFood(event.target.value);
          }}
        />
      )}
      {number("gramsPerDay", "Use a day, in grams as bought")}
      {number("leadDays", "Days to notice and get it")}
      {number("reserveGrams", "Reserve in grams")}
      <div className="row">
        <button type="submit" className="btn plain slim">
          Keep this level
        </button>
        {par && (
          <button
            type="button"
            className="btn plain slim"
            onClick={() => {
              save({ gramsPerDay: "0", reserveGrams: "0" });
            }}
          >
            No level any more<span className="sr">: {par.name}</span>
          </button>
        )}
        <span role="status" className="small">
          {status}
        </span>
      </div>
    </form>
  );
}
