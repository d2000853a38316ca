"use client";

import { useId } from "react";
import type { Day } from "#lib/calendar/index.ts";
import type { Tick } from "#lib/shopping/index.ts";
import { moneyIn } from "#lib/use-cases/errands/money.ts";
import type { LineView, RunView } from "#lib/use-cases/errands/run-view.ts";
import { LineMore, type TripChoice } from "./line-more.client.tsx";
import type { TickChange } from "./use-ticks.client.ts";
import styles from "./errands.module.css";

const STATE_WORDS = {
  open: "",
  bought: "bought",
  "none-left": "they had none",
  dropped: "left out",
} as const;

/** One line: the tick, what and how much, and the rest behind it. */
export function RunLine({
  monday,
  run,
  line,
  tick,
  trips,
  currency,
  onTick,
}: {
  readonly monday: Day;
  readonly run: RunView;
  readonly line: LineView;
  readonly tick: Tick;
  readonly trips: readonly TripChoice[];
  readonly currency: string;
  readonly onTick: (change: TickChange) => void;
}) {
  const id = useId();
  const money = moneyIn(currency);
  const isOnlyThere = line.isOnlyThere || line.isOnlyThereByHand;
  const isHad = tick.state === "open" || tick.state === "bought";
  const price = tick.paidCents ?? line.cents;
  const words = [
    line.amount,
    line.forDays.length > 0 && `for ${line.forDays.join(", ")}`,
    line.isAssumed && "no product on record: pack and price assumed",
  ];
  return (
    <li className={styles.line}>
      <input
        type="checkbox"
        id={id}
        className={styles.tick}
        aria-labelledby={`${id}-name`}
        aria-describedby={`${id}-words`}
        checked={tick.state === "bought"}
        disabled={!isHad}
        onChange={(event) => {
          onTick({ state: event.target.checked ? "bought" : "open" });
        }}
      />
      <div className={styles.what}>
        <label htmlFor={id} className={styles.label}>
          <span id={`${id}-name`}>{isHad ? line.name : <s>{line.name}</s>}</span>
          <span id={`${id}-words`} className="small quiet">
            {words.filter(Boolean).join(", ")}
          </span>
        </label>
        {(isOnlyThere || line.isByHand || !isHad) && (
          <p className={styles.tags}>
            {!isHad && <span className="tag">{STATE_WORDS[tick.state]}</span>}
            {isOnlyThere && <span className="tag">only there</span>}
            {line.isByHand && <span className="tag">by hand</span>}
          </p>
        )}
      </div>
      <span className={styles.price}>
        {price === null || !isHad ? "" : money(price)}
        {tick.paidCents !== null && isHad && <span className="sr"> paid</span>}
      </span>
      <LineMore key={tick.stamp} {...{ monday, run, line, tick, trips, onTick }} />
    </li>
  );
}
