"use client";

import { useId } from "react";
import type { Household, Line } from "./compose-line.ts";
import type { Larder } from "#app/_forms/use-larder.client.ts";
import styles from "./slate.module.css";

/** One item of a lunch: part, amount, place in the list, and what is rarely changed behind "More". */
export function ItemRow({
  line,
  household,
  larder,
  isFirst,
  isLast,
  problems,
  onChange,
  onMove,
  onRemove,
  onDrop,
}: {
  readonly line: Line;
  readonly household: Household;
  readonly larder: Larder | undefined;
  readonly isFirst: boolean;
  readonly isLast: boolean;
  readonly problems: readonly string[];
  readonly onChange: (part: Partial<Line>) => void;
  readonly onMove: (by: number) => void;
  readonly onRemove: () => void;
  readonly onDrop: (draggedKey: string) => void;
}) {
  const id = useId();
  return (
    <div
      onDragOver={(event) => {
        event.preventDefault();
      }}
      onDrop={(event) => {
        event.preventDefault();
        onDrop(event.dataTransfer.getData("text/plain"));
      }}
    >
      <div className={styles.row} role="group" aria-label={line.name}>
        <strong
          className={styles.grip}
          draggable
          onDragStart={(event) => {
            event.dataTransfer.setData("text/plain", line.key);
          }}
        >
          {line.name}
        </strong>
        <select
          className="field"
          aria-label={`Part of ${line.name}`}
          value={line.part}
          onChange={(event) => {
            onChange({ part: event.target.value });
          }}
        >
          {household.parts.map((part) => (
            <option key={part}>{part}</option>
          ))}
        </select>
        <input
          className="field"
          inputMode="decimal"
          aria-label={`Amount of ${line.name}`}
          aria-describedby={problems.length > 0 ? `${id}-problems` : undefined}
          value={line.amount}
          onChange={(event) => {
            onChange({ amount: event.target.value });
          }}
        />
        <input
          className="field"
          aria-label={`Unit of ${line.name}`}
          value={line.unit}
          onChange={(event) => {
            onChange({ unit: event.target.value });
          }}
        />
        <span className={styles.moves}>
          <button
            className="btn plain slim"
            type="button"
            disabled={isFirst}
            aria-label={`Move ${line.name} up`}
            onClick={() => {
              onMove(-1);
            }}
          >
            ↑
          </button>
          <button
            className="btn plain slim"
            type="button"
            disabled={isLast}
            aria-label={`Move ${line.name} down`}
            onClick={() => {
              onMove(1);
            }}
          >
            ↓
          </button>
          <button
            className="btn plain slim"
            type="button"
            aria-label={`Take out ${line.name}`}
            onClick={onRemove}
          >
            Take out
          </button>
        </span>
      </div>
      {problems.length > 0 && (
        <p className="rule-error" id={`${id}-problems`}>
          {problems.join(" ")}
        </p>
      )}
      <MoreOfItem line={line} household={household} larder={larder} onChange={onChange} />
    </div>
  );
}

function MoreOfItem({
  line,
  household,
  larder,
  onChange,
}: {
  readonly line: Line;
  readonly household: Household;
  readonly larder: Larder | undefined;
  readonly onChange: (part: Partial<Line>) => void;
}) {
  const id = useId();
  const food = larder?.foods.find((one) => one.id === line.foodId);
  const chosen = line.tricks;
  const tricks = (larder?.tricks ?? []).filter(
    (trick) =>
      (food?.sliceable || !trick.needsSliceable) && !chosen.some((one) => one.id === trick.id),
  );
  const told = [
    ...chosen.map((trick) => trick.name),
    household.shops.find((shop) => shop.id === line.shopId)?.name,
    Object.values(line.shares).some((share) => share !== "") && "own amounts",
  ].filter((part) => typeof part === "string");
  return (
    <details className={styles.more}>
      <summary>
        {told.length > 0 ? told.join(", ") : "Trick, shop, amount by child"}
        <span className="sr"> for {line.name}</span>
      </summary>
      <div className={styles.moreFields}>
        <div>
          <label htmlFor={`${id}-trick`}>Add a trick</label>
          <select
            className="field"
            id={`${id}-trick`}
            value=""
            disabled={larder === undefined}
            onChange={(event) => {
              const trick = tricks.find((one) => one.id === event.target.value);
              if (trick) onChange({ tricks: [...chosen, { id: trick.id, name: trick.name }] });
            }}
          >
            <option value="">Choose …</option>
            {tricks.map((trick) => (
              <option key={trick.id} value={trick.id}>
                {trick.name}
              </option>
            ))}
          </select>
          {chosen.length > 0 && (
            <p className="row">
              {chosen.map((trick) => (
                <button
                  className="chip"
                  key={trick.id}
                  type="button"
                  aria-label={`Take off ${trick.name}`}
                  onClick={() => {
                    onChange({ tricks: chosen.filter((one) => one.id !== trick.id) });
                  }}
                >
                  {trick.name} ×
                </button>
              ))}
            </p>
          )}
        </div>
        {household.shops.length > 0 && (
          <div>
            <label htmlFor={`${id}-shop`}>From</label>
            <select
              className="field"
              id={`${id}-shop`}
              value={line.shopId}
              onChange={(event) => {
                onChange({ shopId: event.target.value });
              }}
            >
              <option value="">any shop</option>
              {household.shops.map((shop) => (
                <option key={shop.id} value={shop.id}>
                  {shop.name}
                </option>
              ))}
            </select>
          </div>
        )}
        {household.people.map((person) => (
          <div key={person.id}>
            <label htmlFor={`${id}-${person.id}`}>
              {person.name}’s amount, {line.unit}
            </label>
            <input
              className="field"
              id={`${id}-${person.id}`}
              inputMode="decimal"
              placeholder="by portion"
              value={line.shares[person.id] ?? ""}
              onChange={(event) => {
                onChange({ shares: { ...line.shares, [person.id]: event.target.value } });
              }}
            />
          </div>
        ))}
      </div>
    </details>
  );
}
