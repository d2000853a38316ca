"use client";

import { useId, useState } from "react";
import { suggestFoods } from "#lib/catalog/index.ts";
import type { Choice } from "./compose-line.ts";
import type { LarderState } from "#app/_forms/use-larder.client.ts";
import styles from "./slate.module.css";

const SUGGESTED = 6;

/** Search as you type over every name a food has; Enter takes the first, the list is reached by Tab. */
export function FoodFinder({
  label = "Add a food",
  larder,
  onChoose,
}: {
  readonly label?: string;
  readonly larder: LarderState;
  readonly onChoose: (food: Choice) => void;
}) {
  const id = useId();
  const [typed, setTyped] = useState("");
  const isAsked = typed.trim() !== "";
  const found =
    isAsked && larder.kind === "here" ? suggestFoods(typed, larder.larder.foods, SUGGESTED) : [];
  const choose = (food: Choice): void => {
    onChoose(food);
    setTyped("");
  };
  return (
    <div className={styles.finder}>
      <label htmlFor={id}>{label}</label>
      <input
        className="field"
        id={id}
        autoComplete="off"
        placeholder="cucumber, oat bar, mandarin …"
        value={typed}
        onChange={(event) => {
          setTyped(event.target.value);
        }}
        onKeyDown={(event) => {
          if (event.key !== "Enter") return;
          event.preventDefault();
          if (found[0]) choose(found[0]);
        }}
      />
      {found.length > 0 && (
        <ul className={styles.found} aria-label="Foods found">
          {found.map((food) => (
            <li key={food.id}>
              <button
                type="button"
                onClick={() => {
                  choose(food);
                }}
              >
                {food.name}
                <span className="small quiet">{food.part}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      {isAsked && larder.kind === "here" && found.length === 0 && (
        <p className="small quiet">No food of the Larder goes by that name.</p>
      )}
      {isAsked && larder.kind === "waiting" && (
        <p className="small quiet" role="status">
          Opening the Larder …
        </p>
      )}
      {larder.kind === "failed" && (
        <p className="rule-error" role="alert">
          The Larder did not open.{" "}
          <button className="btn plain slim" type="button" onClick={larder.retry}>
            Try again
          </button>
        </p>
      )}
    </div>
  );
}
