import { longDay, longWeekday } from "#lib/calendar/index.ts";
import { moneyIn } from "#lib/use-cases/errands/money.ts";
import type { LineView, RunView } from "#lib/use-cases/errands/run-view.ts";
import styles from "./errands.module.css";

/** One run: the shop and its hours, the lines by aisle. */
export function RunSheet({ run, currency }: { readonly run: RunView; readonly currency: string }) {
  const money = moneyIn(currency);
  return (
    <section className={styles.run} aria-label={`${longWeekday(run.day)}, ${run.shopName}`}>
      <header className={styles.runHead}>
        <div>
          <p className={styles.day}>
            <time dateTime={run.day}>{longDay(run.day).replace(/ \d{4}$/, "")}</time>
          </p>
          <h2>{run.shopName}</h2>
          <p className="small quiet">{run.hours === "" ? "hours not said" : `open ${run.hours}`}</p>
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
              <Line
                key={line.id}
                line={line}
                price={line.cents === null ? "" : money(line.cents)}
              />
            ))}
          </ul>
        </div>
      ))}
      {run.aisles.length === 0 && <p className="small quiet">Nothing on it yet.</p>}
    </section>
  );
}

function Line({ line, price }: { readonly line: LineView; readonly price: string }) {
  return (
    <li className={styles.line}>
      <span className={styles.tick} aria-hidden="true" />
      <div>
        <p>
          <strong>{line.name}</strong>
        </p>
        <p className="small quiet">
          {[line.amount, line.forDays.length > 0 && `for ${line.forDays.join(", ")}`]
            .filter(Boolean)
            .join(", ")}
        </p>
        {line.arithmetic !== "" && (
          <details className={styles.how}>
            <summary>How much, and why</summary>
            <p className="small">{line.arithmetic}</p>
          </details>
        )}
      </div>
      <span className="num">{price}</span>
    </li>
  );
}
