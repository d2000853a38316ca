import { mediumDay, type Day } from "#lib/calendar/index.ts";
import type { PickedItem } from "#lib/use-cases/proposal/load-proposal.ts";
import { DeskForm } from "./desk-form.client.tsx";
import styles from "./propose.module.css";

/** One proposed food: why it is there, what could stand in at which cost, and what to do with it. */
export function Picked({ picked, month }: { readonly picked: PickedItem; readonly month: Day }) {
  const { item, date } = picked;
  const place = { date, itemId: item.id };
  return (
    <section className="sheet" id="picked" aria-label={`${item.name}, ${mediumDay(date)}`}>
      <h2>
        {item.name}, {mediumDay(date)}
      </h2>
      <p>
        {picked.reasons.length > 0 ? `Chosen for: ${picked.reasons.join("; ")}. ` : ""}
        {picked.runnerUp}
      </p>
      <div className={styles.acts}>
        <DeskForm step={item.isLocked ? "unlock" : "lock"} month={month} fields={place}>
          <button className="btn plain slim">{item.isLocked ? "Unlock it" : "Lock it here"}</button>
        </DeskForm>
        <DeskForm
          step={picked.isPreferred ? "unprefer" : "prefer"}
          month={month}
          fields={{ itemId: item.id }}
        >
          <button className="btn plain slim">
            {picked.isPreferred ? "No longer prefer it" : "Prefer it"}
          </button>
        </DeskForm>
        <DeskForm step="ban" month={month} fields={{ itemId: item.id }}>
          <button className="btn plain slim">Keep it out this month</button>
        </DeskForm>
      </div>
      <h3>What could stand in</h3>
      {picked.standIns.length === 0 ? (
        <p className="small quiet">Nothing else fits there without breaking a rule.</p>
      ) : (
        <ul className={styles.standIns}>
          {picked.standIns.map((standIn) => (
            <li key={standIn.id}>
              <DeskForm step="swap" month={month} fields={{ ...place, otherId: standIn.id }}>
                <button className="btn plain slim">{standIn.name}</button>
              </DeskForm>
              <span className="small quiet">{standIn.cost}</span>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
