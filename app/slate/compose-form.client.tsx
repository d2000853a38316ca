"use client";

import { useId, useRef, useState, type FormEvent } from "react";
import { saveLunchAction } from "./actions.ts";
import { lineOf, moved, numberTyped, type Household, type Line } from "./compose-line.ts";
import { FoodFinder } from "./food-finder.client.tsx";
import { ItemRow } from "./item-row.client.tsx";
import { QuickLine } from "./quick-line.client.tsx";
import { useLarder } from "#app/_forms/use-larder.client.ts";
import styles from "./slate.module.css";

/** Composes one lunch: find foods as you type, then part, amount and order; saved as a whole. */
export function ComposeForm({
  lunchId,
  revision: opened,
  angle,
  items,
  household,
}: {
  readonly lunchId: string;
  readonly revision: number;
  readonly angle: string;
  readonly items: readonly Line[];
  readonly household: Household;
}) {
  const id = useId();
  const larder = useLarder();
  const made = useRef(0);
  const [lines, setLines] = useState(items);
  const [title, setTitle] = useState(angle);
  const [revision, setRevision] = useState(opened);
  const [problems, setProblems] = useState<Readonly<Record<string, string>>>({});
  const [status, setStatus] = useState<string>();

  const touch = (next: (held: readonly Line[]) => readonly Line[]): void => {
    setLines(next);
    setStatus("Not saved yet.");
  };
  const save = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    setStatus("Saving …");
    const state = await saveLunchAction({
      lunchId,
      revision,
      angle: title,
      items: lines.map((line) => ({
        ...line,
        amount: numberTyped(line.amount),
        trickIds: line.tricks.map((trick) => trick.id),
        shares: Object.entries(line.shares)
          .filter(([, share]) => share.trim() !== "")
          .map(([childId, share]) => ({ childId, amount: numberTyped(share) })),
      })),
    }).catch(() => undefined);
    setProblems(state?.kind === "invalid" ? state.fields : {});
    if (!state) setStatus("Noonbook did not answer. What you typed is still here: save again.");
    else if (state.kind === "refused") setStatus(state.message);
    else if (state.kind === "invalid") setStatus("Look at the marked fields.");
    else {
      setRevision(state.revision);
      const { itemIds } = state;
      setLines((held) => held.map((line, index) => ({ ...line, id: itemIds[index] ?? line.id })));
      setStatus("Saved.");
    }
  };

  return (
    <form className={styles.rows} onSubmit={(event) => void save(event)} noValidate>
      <div>
        <label htmlFor={`${id}-angle`}>Angle</label>
        <input
          className="field"
          id={`${id}-angle`}
          value={title}
          placeholder="what this lunch plays, such as “Sealed envelope”"
          onChange={(event) => {
            setTitle(event.target.value);
            setStatus("Not saved yet.");
          }}
        />
        {problems["angle"] && <p className="rule-error">{problems["angle"]}</p>}
      </div>
      {lines.map((line, index) => (
        <ItemRow
          key={line.key}
          line={line}
          household={household}
          larder={larder.kind === "here" ? larder.larder : undefined}
          isFirst={index === 0}
          isLast={index === lines.length - 1}
          problems={Object.entries(problems)
            .filter(([field]) => field.startsWith(`items.${index}.`))
            .map(([, message]) => message)}
          onChange={(part) => {
            touch((held) => held.map((one) => (one.key === line.key ? { ...one, ...part } : one)));
          }}
          onMove={(by) => {
            touch((held) => moved(held, line.key, by));
          }}
          onRemove={() => {
            touch((held) => held.filter((one) => one.key !== line.key));
          }}
          onDrop={(dragged) => {
            touch((held) =>
              moved(held, dragged, index - held.findIndex((one) => one.key === dragged)),
            );
          }}
        />
      ))}
      <QuickLine
        larder={larder}
        parts={household.parts}
        onTake={(taken) => {
          const fresh = taken.map((line) => {
            made.current += 1;
            return { ...line, key: `new-${made.current}` };
          });
          touch((held) => [...held, ...fresh]);
        }}
      />
      <FoodFinder
        larder={larder}
        onChoose={(food) => {
          made.current += 1;
          const key = `new-${made.current}`;
          touch((held) => [...held, lineOf(food, key)]);
        }}
      />
      <div className="row">
        <button className="btn" type="submit">
          Save this lunch
        </button>
        <span role="status">{status}</span>
      </div>
    </form>
  );
}
