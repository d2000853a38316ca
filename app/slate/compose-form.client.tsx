"use client";

import { useId, useState, type FormEvent } from "react";
import { suggestFoods } from "#lib/catalog/index.ts";
import { saveLunchAction } from "./actions.ts";
import styles from "./slate.module.css";

type Choice = {
  readonly id: string;
  readonly name: string;
  readonly aliases: readonly string[];
  readonly part: string;
  readonly amount: number;
  readonly unit: string;
};
type Line = {
  readonly key: number;
  readonly foodId: string;
  readonly name: string;
  readonly part: string;
  readonly amount: string;
  readonly unit: string;
  readonly trickIds: readonly string[];
};

/** Composes one lunch: find foods as you type, then part, amount and order; saved as a whole. */
export function ComposeForm({
  lunchId,
  revision,
  angle,
  items,
  foods,
  parts,
}: {
  readonly lunchId: string;
  readonly revision: number;
  readonly angle: string;
  readonly items: readonly (Omit<Line, "key" | "amount"> & { readonly amount: number })[];
  readonly foods: readonly Choice[];
  readonly parts: readonly string[];
}) {
  const id = useId();
  const [lines, setLines] = useState<readonly Line[]>(() =>
    items.map((item, key) => ({ ...item, key, amount: String(item.amount) })),
  );
  const [title, setTitle] = useState(angle);
  const [problems, setProblems] = useState<Readonly<Record<string, string>>>({});
  const [status, setStatus] = useState<string>();

  const change = (key: number, part: Partial<Line>): void => {
    setLines((held) => held.map((line) => (line.key === key ? { ...line, ...part } : line)));
  };
  const move = (index: number, by: number): void => {
    setLines((held) => {
      const copy = [...held];
      const [line] = copy.splice(index, 1);
      if (line) copy.splice(index + by, 0, line);
      return copy;
    });
  };
  const add = (food: Choice): void => {
    setLines((held) => [
      ...held,
      {
        key: Math.max(-1, ...held.map((line) => line.key)) + 1,
        foodId: food.id,
        name: food.name,
        part: food.part,
        amount: String(food.amount),
        unit: food.unit,
        trickIds: [],
      },
    ]);
  };
  const save = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setStatus("Saving …");
    const state = await saveLunchAction({
      lunchId,
      revision,
      angle: title,
      items: lines.map(({ foodId, part, amount, unit, trickIds }) => ({
        foodId,
        part,
        amount: Number(amount.replace(",", ".")),
        unit,
        trickIds,
      })),
    }).catch(() => undefined);
    setProblems(state?.kind === "invalid" ? state.fields : {});
    if (!state) setStatus("Noonbook did not answer. What you typed is still here: save again.");
    else if (state.kind === "refused") setStatus(state.message);
    else setStatus(state.kind === "saved" ? "Saved." : "Look at the marked fields.");
  };

  return (
    <form className={styles.rows} onSubmit={(event) => void save(event)} noValidate>
      <div>
        <label htmlFor={`${id}-angle`}>Angle</label>
        <input
          className="field"
          id={`${id}-angle`}
          value={title}
          onChange={(event) => {
            setTitle(event.target.value);
          }}
        />
        {problems["angle"] && <p className="rule-error">{problems["angle"]}</p>}
      </div>
      {lines.map((line, index) => (
        <div key={line.key}>
          <div className={styles.row} role="group" aria-label={line.name}>
            <strong>{line.name}</strong>
            <select
              className="field"
              aria-label={`Part of ${line.name}`}
              value={line.part}
              onChange={(event) => {
                change(line.key, { part: event.target.value });
              }}
            >
              {parts.map((part) => (
                <option key={part}>{part}</option>
              ))}
            </select>
            <input
              className="field"
              inputMode="decimal"
              aria-label={`Amount of ${line.name}`}
              value={line.amount}
              onChange={(event) => {
                change(line.key, { amount: event.target.value });
              }}
            />
            <input
              className="field"
              aria-label={`Unit of ${line.name}`}
              value={line.unit}
              onChange={(event) => {
                change(line.key, { unit: event.target.value });
              }}
            />
            <span className={styles.moves}>
              <button
                className="btn plain slim"
                type="button"
                disabled={index === 0}
                aria-label={`Move ${line.name} up`}
                onClick={() => {
                  move(index, -1);
                }}
              >
                ↑
              </button>
              <button
                className="btn plain slim"
                type="button"
                aria-label={`Take out ${line.name}`}
                onClick={() => {
                  setLines((held) => held.filter((one) => one.key !== line.key));
                }}
              >
                Take out
              </button>
            </span>
          </div>
          {["amount", "unit", "foodId", "part"].map(
            (field) =>
              problems[`items.${index}.${field}`] && (
                <p className="rule-error" key={field}>
                  {problems[`items.${index}.${field}`]}
                </p>
              ),
          )}
        </div>
      ))}
      <FoodFinder foods={foods} onChoose={add} />
      <div className="row">
        <button className="btn" type="submit">
          Save this lunch
        </button>
        <span role="status">{status}</span>
      </div>
    </form>
  );
}

/** Search as you type over every name a food has. */
function FoodFinder({
  foods,
  onChoose,
}: {
  readonly foods: readonly Choice[];
  readonly onChoose: (food: Choice) => void;
}) {
  const id = useId();
  const [typed, setTyped] = useState("");
  const found = typed.trim() === "" ? [] : suggestFoods(typed, foods, 6);
  return (
    <div className={styles.finder}>
      <label htmlFor={id}>Add a food</label>
      <input
        className="field"
        id={id}
        autoComplete="off"
        placeholder="cucumber, oat bar, mandarin …"
        value={typed}
        onChange={(event) => {
          setTyped(event.target.value);
        }}
      />
      {found.length > 0 && (
        <ul className={styles.found}>
          {found.map((food) => (
            <li key={food.id}>
              <button
                type="button"
                onClick={() => {
                  onChoose(food);
                  setTyped("");
                }}
              >
                {food.name}
                <span className="small quiet">{food.part}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
