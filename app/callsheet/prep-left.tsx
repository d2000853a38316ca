import Link from "next/link";
import { addDays, shortDay } from "#lib/calendar/index.ts";
import type { MiseStep, MiseView } from "#lib/use-cases/load-mise.ts";
import { TickBox } from "#app/mise/tick-box.client.tsx";
import type { ReadyLunchView } from "#lib/use-cases/load-ready-lunch.ts";
import sheet from "#app/_ui/one-page.module.css";
import { ReadyLunchForm } from "./ready-lunch.client.tsx";
import styles from "./callsheet.module.css";

/** The prep of the day with its ticks, as much of it as there is. */
export function PrepLeft({ mise }: { readonly mise: MiseView }) {
  const eve = shortDay(addDays(mise.date, -1));
  const rows = [
    ...mise.evening.map((step) => ({ step, start: `${eve.slice(0, 3)} ${step.starts}` })),
    ...mise.morning.map((step) => ({ step, start: step.starts })),
  ];
  const left = rows.filter(({ step }) => step.tick === null).length;
  return (
    <section className={sheet.box}>
      <h2>Prep left</h2>
      {rows.length === 0 ? (
        <p className="quiet">Nothing to prepare yet.</p>
      ) : (
        <div className={styles.scroll} role="region" aria-label="Prep left" tabIndex={0}>
          <table className={styles.prep}>
            <thead>
              <tr>
                <th>Done</th>
                <th>Start</th>
                <th>Step</th>
                <th className="n">Hands</th>
                <th>On</th>
              </tr>
            </thead>
            <tbody>
              {rows.map(({ step, start }) => (
                <Row key={`${step.id} ${step.tick ? "done" : "open"}`} {...{ mise, step, start }} />
              ))}
            </tbody>
          </table>
        </div>
      )}
      <p className="small noprint">
        {rows.length > 0 && (left === 0 ? "All done. " : `${left} of ${rows.length} left. `)}
        <Link href={`/mise/${mise.date}`}>Open the mise</Link>
      </p>
    </section>
  );
}

function Row({
  mise,
  step,
  start,
}: {
  readonly mise: MiseView;
  readonly step: MiseStep;
  readonly start: string;
}) {
  return (
    <tr>
      <td>
        <TickBox
          lunchId={mise.lunchId}
          stepKey={step.id}
          line={step.line}
          isDone={step.tick !== null}
          minutes={step.tick?.minutes ?? null}
        />
      </td>
      <td>
        <strong>
          <time>{start}</time>
        </strong>
      </td>
      <td>{step.tick ? <s>{step.line}</s> : step.line}</td>
      <td className="n">{step.handsOn ? `${step.minutes} min` : "–"}</td>
      <td>{step.appliance === "none" ? "" : step.appliance.replace("-", " ")}</td>
    </tr>
  );
}

/** What to let go when the morning begins late, and the lunch that stands ready when all goes wrong. */
export function PlanB({
  mise,
  ready,
}: {
  readonly mise: MiseView;
  readonly ready: ReadyLunchView | undefined;
}) {
  return (
    <section className={sheet.box} aria-label="Plan B">
      <h2>Plan B</h2>
      {mise.planB.length === 0 && <p className="quiet">Nothing to leave out.</p>}
      <ul>
        {mise.planB.map(({ late, sentence }) => (
          <li key={late}>
            <strong>Late by {late} min:</strong> {sentence}
          </li>
        ))}
        {ready && (
          <li>
            <strong>All goes wrong:</strong> {readyWords(ready)}
            <ReadyLunchForm lunchId={mise.lunchId} ready={ready} />
          </li>
        )}
      </ul>
    </section>
  );
}

function readyWords({ foods, minutes, missing }: ReadyLunchView): string {
  const list = new Intl.ListFormat("en");
  const names = list.format(
    foods.map(({ name, isPlanned }) => (isPlanned ? `${name} (planned)` : name)),
  );
  const lack = missing.length === 0 ? "" : ` Nothing at home for ${list.format(missing)}.`;
  return `${names}, from what is at home, ${minutes} min.${lack}`;
}
