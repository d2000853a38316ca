"use client";

import { useId, useState } from "react";
import { describeGrams, PLACES } from "#lib/shopping/index.ts";
import type { LotView } from "#lib/use-cases/errands/load-stock.ts";
import { Field } from "#app/_forms/field.client.tsx";
import { Icon } from "#app/_ui/icon.tsx";
import { changeStockAction } from "./actions.ts";
import { numberTyped } from "./numbers.ts";
import { useStockChange } from "./use-stock-change.client.ts";
import styles from "./stock.module.css";

/** One lot: what, how much, until when, and what can be done with it. */
export function LotLine({ lot, opened }: { readonly lot: LotView; readonly opened: string }) {
  const { send, status } = useStockChange();
  const at = { lotId: lot.id, seenGrams: lot.grams };
  return (
    <li className={styles.lot}>
      <div className={styles.what}>
        <p>
          <strong>{lot.name}</strong> <span className="num">{describeGrams(lot.grams)}</span>
        </p>
        <p className="small quiet">
          {[lot.productName, opened].filter((part) => part !== null && part !== "").join(", ")}
        </p>
      </div>
      <p className={styles.until}>
        {lot.isRecalled && (
          <span className="tag broken">
            <Icon name="stop" /> recalled: do not use
          </span>
        )}
        {lot.lastDay !== null && lot.daysLeft !== null ? (
          <>
            <time dateTime={lot.lastDay}>{lot.lastDayText}</time>
            <span className="small quiet">
              {daysWord(lot.daysLeft)}, {lot.source === "label" ? "on the label" : "by the table"}
            </span>
          </>
        ) : (
          <span className="small quiet">no date known, look at the label</span>
        )}
      </p>
      <div className={`${styles.acts ?? ""} noprint`}>
        {lot.openedOn === null && (
          <Act
            lot={lot}
            word="Opened"
            onAct={() => send(changeStockAction({ kind: "open", ...at }))}
          />
        )}
        <Act
          lot={lot}
          word="All used"
          onAct={() => send(changeStockAction({ kind: "use", ...at, grams: lot.grams }))}
        />
        <Act
          lot={lot}
          word="Thrown away"
          onAct={() => send(changeStockAction({ kind: "throw", ...at, grams: lot.grams }))}
        />
        {lot.canFreeze && (
          <Act
            lot={lot}
            word="Frozen"
            onAct={() => send(changeStockAction({ kind: "freeze", ...at }))}
          />
        )}
        <span role="status" className="small">
          {status}
        </span>
      </div>
      <details className={`${styles.more ?? ""} noprint`}>
        <summary>
          A part of it, or correct it<span className="sr">: {lot.name}</span>
        </summary>
        <PartForm lot={lot} />
        <CountForm lot={lot} />
      </details>
    </li>
  );
}

function daysWord(days: number): string {
  if (days < 0) return days === -1 ? "1 day over" : `${-days} days over`;
  if (days === 0) return "today";
  return days === 1 ? "tomorrow" : `in ${days} days`;
}

function Act({
  lot,
  word,
  onAct,
}: {
  readonly lot: LotView;
  readonly word: string;
  readonly onAct: () => Promise<boolean>;
}) {
  return (
    <button type="button" className="btn plain slim" onClick={() => void onAct()}>
      {word}
      <span className="sr">: {lot.name}</span>
    </button>
  );
}

function PartForm({ lot }: { readonly lot: LotView }) {
  const { send, status, problems } = useStockChange();
  const [grams, setGrams] = useState("");
  const take = (kind: "use" | "throw"): void => {
    const at = { lotId: lot.id, seenGrams: lot.grams, grams: numberTyped(grams) };
    void send(changeStockAction({ kind, ...at }));
  };
  return (
    <form
      className={styles.form}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        take("use");
      }}
    >
      <Field
        label="Grams of it"
        inputMode="decimal"
        value={grams}
        error={problems["grams"]}
        onChange={(event) => {
          setGrams(event.target.value);
        }}
      />
      <div className="row">
        <button type="submit" className="btn plain slim">
          Used
        </button>
        <button
          type="button"
          className="btn plain slim"
          onClick={() => {
            take("throw");
          }}
        >
          Thrown away
        </button>
        <span role="status" className="small">
          {status}
        </span>
      </div>
    </form>
  );
}

function CountForm({ lot }: { readonly lot: LotView }) {
  const id = useId();
  const { send, status, problems } = useStockChange();
  const [grams, setGrams] = useState(String(Math.round(lot.grams * 10) / 10));
  const [useBy, setUseBy] = useState<string>(lot.useBy ?? "");
  const [place, setPlace] = useState<string>(lot.place);
  return (
    <form
      className={styles.form}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        const typed = { grams: numberTyped(grams), useBy: useBy === "" ? null : useBy, place };
        const at = { lotId: lot.id, seenGrams: lot.grams };
        void send(changeStockAction({ kind: "count", ...at, ...typed }));
      }}
    >
      <Field
        label="Grams there are"
        inputMode="decimal"
        value={grams}
        error={problems["grams"]}
        onChange={(event) => {
          setGrams(event.target.value);
        }}
      />
      <Field
        label="Use by, on the label"
        type="date"
        value={useBy}
        error={problems["useBy"]}
        hint="The label wins over the table."
        onChange={(event) => {
          setUseBy(event.target.value);
        }}
      />
      <div>
        <label htmlFor={`${id}-place`}>Kept in</label>
        <select
          id={`${id}-place`}
          className="field"
          value={place}
          onChange={(event) => {
            setPlace(event.target.value);
          }}
        >
          {PLACES.map((one) => (
            <option key={one}>{one}</option>
          ))}
        </select>
      </div>
      <div className="row">
        <button type="submit" className="btn plain slim">
          Correct it
        </button>
        <span role="status" className="small">
          {status}
        </span>
      </div>
    </form>
  );
}
