"use client";

import type { Day } from "#lib/calendar/index.ts";
import { longDay, longWeekday } from "#lib/calendar/index.ts";
import { moneyIn } from "#lib/use-cases/errands/money.ts";
import type { RunView } from "#lib/use-cases/errands/run-view.ts";
import type { TripChoice } from "./line-more.client.tsx";
import { RunLine } from "./run-line.client.tsx";
import { RunMore } from "./run-more.client.tsx";
import { useTicks, type TickDesk } from "./use-ticks.client.ts";
import styles from "./errands.module.css";

/** The runs of a week, to be ticked off; works on while the network is gone. */
export function RunsDesk({
  monday,
  runs,
  currency,
  trips,
}: {
  readonly monday: Day;
  readonly runs: readonly RunView[];
  readonly currency: string;
  /** Trips a line may be moved to. */
  readonly trips: readonly TripChoice[];
}) {
  const desk = useTicks(monday, runs);
  return (
    <>
      <p className={styles.status} role="status">
        {statusOf(desk)}
      </p>
      <div className={styles.runs}>
        {runs.map((run) => (
          <Run key={`${run.day} ${run.shopId}`} {...{ monday, run, currency, desk, trips }} />
        ))}
      </div>
    </>
  );
}

function statusOf({ waiting, problem }: TickDesk): string {
  if (problem !== undefined) return problem;
  if (waiting === 0) return "";
  return waiting === 1
    ? "1 tick is kept here and waits for Noonbook."
    : `${waiting} ticks are kept here and wait for Noonbook.`;
}

function Run({
  monday,
  run,
  currency,
  desk,
  trips,
}: {
  readonly monday: Day;
  readonly run: RunView;
  readonly currency: string;
  readonly desk: TickDesk;
  readonly trips: readonly TripChoice[];
}) {
  const money = moneyIn(currency);
  const lines = run.aisles.flatMap((aisle) => aisle.lines);
  const open = lines.filter((line) => desk.tickOf(line).state === "open").length;
  return (
    <section className={styles.run} aria-label={`${longWeekday(run.day)}, ${run.shopName}`}>
      <header className={styles.runHead}>
        <div>
          <p className={styles.day}>
            <time dateTime={run.day}>{longDay(run.day).replace(/ \d{4}$/, "")}</time>
            {run.isDone && <span className="tag">done</span>}
            {run.isByHand && <span className="tag">by hand</span>}
          </p>
          <h2>{run.shopName}</h2>
          <p className="small quiet">
            {run.hours === "" ? "hours not said" : `open ${run.hours}`}
            {lines.length > 0 && `, ${open} of ${lines.length} open`}
          </p>
        </div>
        <p className={styles.sum}>
          <span className="small quiet">about</span> <strong>{money(run.cents)}</strong>
        </p>
      </header>
      {run.aisles.map((aisle) => (
        <div key={aisle.name} className={styles.aisle}>
          <h3>{aisle.name === "" ? "anywhere in the shop" : aisle.name}</h3>
          <ul>
            {aisle.lines.map((line) => (
              <RunLine
                key={line.id}
                {...{ monday, run, line, trips, currency }}
                tick={desk.tickOf(line)}
                onTick={(change) => {
                  desk.tick(run, line, change);
                }}
              />
            ))}
          </ul>
        </div>
      ))}
      {run.aisles.length === 0 && <p className="small quiet">Nothing on it yet.</p>}
      {!run.isOver && <RunMore monday={monday} run={run} />}
    </section>
  );
}
