import { shortDay, type Day } from "#lib/calendar/index.ts";
import { describeMark } from "#lib/safety/index.ts";
import type { WeekChecks } from "#lib/use-cases/read-checks.ts";
import styles from "./checks.module.css";

/** The week by the chosen scheme: what each lunch counts for, the colours, and where the rules stand. */
export function WeekBalance({
  days,
  notes,
  balance,
}: {
  readonly days: readonly Day[];
  readonly notes: WeekChecks["notes"];
  readonly balance: NonNullable<WeekChecks["balance"]>;
}) {
  const { rows, unread, colours, cites, scheme } = balance;
  const hasLeast = rows.some(({ weekLeast }) => weekLeast !== "");
  return (
    <section className={`sheet ${styles.balance ?? ""}`} aria-labelledby="balance-title">
      <h2 id="balance-title">Balance of the week</h2>
      <p className="small quiet">
        By the {scheme}, for a child of portion factor 1. Guidance with its source; it grades
        nobody.
      </p>
      <div role="region" aria-label="Balance of the week" tabIndex={0} className={styles.scroll}>
        <table>
          <thead>
            <tr>
              <th>Counted</th>
              {days.map((day) => (
                <th className="n" key={day}>
                  {shortDay(day)}
                </th>
              ))}
              <th className="n">Week</th>
              {hasLeast && <th className="n">Least a day</th>}
              {hasLeast && <th className="n">Least a week</th>}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.name}>
                <th scope="row">
                  {row.name}, {row.unit}
                </th>
                {row.days.map((amount, index) => (
                  <td className="n" key={days[index]}>
                    {amount}
                  </td>
                ))}
                <td className="n">
                  <strong>{row.week}</strong>
                </td>
                {hasLeast && <td className="n quiet">{row.dayLeast || "–"}</td>}
                {hasLeast && <td className="n quiet">{row.weekLeast || "–"}</td>}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {notes.map(({ key, sentence }) => (
        <p key={key}>{sentence}</p>
      ))}
      <p className="small">
        Colours of the week:{" "}
        {colours.map(({ colour, days: on }) => `${colour} on ${on}`).join(", ") || "none yet"}.
      </p>
      {unread.length > 0 && (
        <p className="small quiet">
          Not counted, as only a recipe or the maker’s statement can say: {unread.join(", ")}.
        </p>
      )}
      <details className={`${styles.fold} noprint`}>
        <summary>Source</summary>
        <ul className={styles.sources}>
          {cites.map(({ title, where, mark }) => (
            <li key={title}>
              {title}: {where} ({describeMark(mark)}).
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}
