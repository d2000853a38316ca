"use client";

import { useId, useState } from "react";
import { PLACES } from "#lib/shopping/index.ts";
import { Field } from "#app/_forms/field.client.tsx";
import { changeStockAction } from "./actions.ts";
import { FoodField } from "./food-field.client.tsx";
import { numberTyped } from "./numbers.ts";
import { useStockChange } from "./use-stock-change.client.ts";
import styles from "./stock.module.css";

const EMPTY = { food: "", grams: "", useBy: "", place: "fridge" };

/** Puts a lot on record that did not come by a run. */
export function AddLotForm() {
  const id = useId();
  const { send, status, problems } = useStockChange();
  const [typed, setTyped] = useState(EMPTY);
  const put = (change: Partial<typeof EMPTY>): void => {
    setTyped((before) => ({ ...before, ...change }));
  };
  const add = async (): Promise<void> => {
    const { food, place } = typed;
    const useBy = typed.useBy === "" ? null : typed.useBy;
    const lot = { kind: "add", food, place, useBy, grams: numberTyped(typed.grams) };
    if (await send(changeStockAction(lot))) setTyped(EMPTY);
  };
  return (
    <form
      className={styles.form}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void add();
      }}
    >
      <FoodField
        label="Food"
        value={typed.food}
        error={problems["food"]}
        onChange={(event) => {
          put({ food: event.target.value });
        }}
      />
      <Field
        label="Grams"
        inputMode="decimal"
        value={typed.grams}
        error={problems["grams"]}
        onChange={(event) => {
          put({ grams: event.target.value });
        }}
      />
      <Field
        label="Use by, on the label (optional)"
        type="date"
        value={typed.useBy}
        error={problems["useBy"]}
        onChange={(event) => {
          put({ useBy: event.target.value });
        }}
      />
      <div>
        <label htmlFor={`${id}-place`}>Kept in</label>
        <select
          id={`${id}-place`}
          className="field"
          value={typed.place}
          onChange={(event) => {
            put({ place: event.target.value });
          }}
        >
          {PLACES.map((one) => (
            <option key={one}>{one}</option>
          ))}
        </select>
      </div>
      <div className="row">
        <button type="submit" className="btn">
          Put it on record
        </button>
        <span role="status" className="small">
          {status}
        </span>
      </div>
    </form>
  );
}
