"use client";

import { useId, useState, type FormEvent } from "react";
import { matchFood } from "#lib/catalog/index.ts";
import { Field } from "#app/_forms/field.client.tsx";
import { openLarder, useLarder } from "#app/_forms/use-larder.client.ts";
import { swapItemAction } from "./actions.ts";
import styles from "./callsheet.module.css";

/** Scraps an item, with what steps in and why. */
export function SwapForm({
  items,
}: {
  readonly items: readonly { readonly id: string; readonly name: string }[];
}) {
  const larder = useLarder();
  const foods = larder.kind === "here" ? larder.larder.foods : [];
  const id = useId();
  const [problems, setProblems] = useState<Readonly<Record<string, string>>>({});
  const [status, setStatus] = useState<string>();
  if (items.length === 0) return <p className="quiet">There is nothing to swap yet.</p>;

  const save = async (event: FormEvent<HTMLFormElement>): Promise<void> => {
    event.preventDefault();
    const form = event.currentTarget;
    const typed = new FormData(form);
    const name = textOf(typed.get("food")).trim();
    const opened = name === "" ? undefined : await openLarder().catch(() => undefined);
    const food = opened && matchFood(name, opened.foods).best;
    if (name !== "" && !food) {
      const why = opened
        ? "No food of the Larder has that name. Pick one from the list."
        : "The Larder did not open. What you typed is still here: swap again.";
      setProblems({ foodId: why });
      return;
    }
    const state = await swapItemAction({
      itemId: textOf(typed.get("item")),
      foodId: food?.food.id ?? "",
      reason: textOf(typed.get("reason")),
    }).catch(() => undefined);
    setProblems(state?.kind === "invalid" ? state.fields : {});
    if (!state) setStatus("Noonbook did not answer. What you typed is still here: try again.");
    else
      setStatus(
        state.kind === "refused" ? state.message : state.kind === "saved" ? "Swapped." : "",
      );
    if (state?.kind === "saved") form.reset();
  };

  return (
    <form className={styles.form} onSubmit={(event) => void save(event)} noValidate>
      <div>
        <label htmlFor={`${id}-item`}>This stays out</label>
        <select className="field" id={`${id}-item`} name="item">
          {items.map((item) => (
            <option key={item.id} value={item.id}>
              {item.name}
            </option>
          ))}
        </select>
      </div>
      <Field
        label="This steps in (optional)"
        name="food"
        list={`${id}-foods`}
        error={problems["foodId"]}
      />
      <datalist id={`${id}-foods`}>
        {foods.map((food) => (
          <option key={food.id} value={food.name} />
        ))}
      </datalist>
      <Field label="Why" name="reason" error={problems["reason"]} />
      <div className="row">
        <button className="btn" type="submit">
          Swap
        </button>
        <span role="status">{status}</span>
      </div>
    </form>
  );
}

function textOf(value: FormDataEntryValue | null): string {
  return typeof value === "string" ? value : "";
}
