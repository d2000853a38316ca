"use client";

import { useId, useState } from "react";
import type { QuickProposal } from "#lib/use-cases/larder/read-quick-line.ts";
import type { LarderState } from "#app/_forms/use-larder.client.ts";
import { FoodFinder } from "./food-finder.client.tsx";
import styles from "./slate.module.css";

/** One item read from a line, as the user leaves or changes it. */
export type QuickChoice = {
  readonly proposal: QuickProposal;
  readonly food: { readonly id: string; readonly name: string } | undefined;
  readonly isTaken: boolean;
  readonly part: string;
  readonly amount: string;
  readonly unit: string;
};

/** One item to confirm: which food, how much, which part, which tricks, and what is in doubt. */
export function QuickRow({
  choice,
  parts,
  larder,
  onChange,
}: {
  readonly choice: QuickChoice;
  readonly parts: readonly string[];
  readonly larder: LarderState;
  readonly onChange: (change: Partial<QuickChoice>) => void;
}) {
  const id = useId();
  const [isLooking, setIsLooking] = useState(false);
  const { proposal, food, isTaken, part, amount, unit } = choice;
  const { text, doubts, tricks } = proposal;
  const options =
    food && !proposal.foods.some((one) => one.id === food.id)
      ? [food, ...proposal.foods]
      : proposal.foods;
  return (
    <li role="group" aria-label={text}>
      <label className={styles.quickTake}>
        <input
          type="checkbox"
          checked={isTaken}
          disabled={food === undefined}
          onChange={(event) => {
            onChange({ isTaken: event.target.checked });
          }}
        />
        “{text}”
      </label>
      <div className={styles.quickFields}>
        <select
          className="field"
          aria-label={`Food for ${text}`}
          aria-describedby={doubts.length > 0 ? `${id}-doubts` : undefined}
          value={food?.id ?? ""}
          onChange={(event) => {
            const chosen = options.find((one) => one.id === event.target.value);
            onChange({ food: chosen, isTaken: chosen !== undefined });
          }}
        >
          {food === undefined && <option value="">which food?</option>}
          {options.map((one) => (
            <option key={one.id} value={one.id}>
              {one.name}
            </option>
          ))}
        </select>
        <input
          className="field"
          inputMode="decimal"
          aria-label={`Amount for ${text}`}
          value={amount}
          onChange={(event) => {
            onChange({ amount: event.target.value });
          }}
        />
        <input
          className="field"
          aria-label={`Unit for ${text}`}
          value={unit}
          onChange={(event) => {
            onChange({ unit: event.target.value });
          }}
        />
        <select
          className="field"
          aria-label={`Part for ${text}`}
          value={part}
          onChange={(event) => {
            onChange({ part: event.target.value });
          }}
        >
          {parts.map((one) => (
            <option key={one}>{one}</option>
          ))}
        </select>
        <button
          className="btn plain slim"
          type="button"
          aria-expanded={isLooking}
          onClick={() => {
            setIsLooking(!isLooking);
          }}
        >
          Another food<span className="sr"> for {text}</span>
        </button>
      </div>
      {isLooking && (
        <FoodFinder
          label={`What “${text}” means`}
          larder={larder}
          onChoose={(found) => {
            onChange({ food: found, isTaken: true, part: found.part });
            setIsLooking(false);
          }}
        />
      )}
      {tricks.length > 0 && (
        <p className="small">With {tricks.map(({ name }) => name).join(", ")}.</p>
      )}
      {doubts.length > 0 && (
        <p className="small quiet" id={`${id}-doubts`}>
          {doubts.join(" ")}
        </p>
      )}
    </li>
  );
}
