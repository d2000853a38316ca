import type { Day } from "#lib/calendar/index.ts";
import type { ProposalView } from "#lib/use-cases/proposal/load-proposal.ts";
import { DeskForm } from "./desk-form.client.tsx";
import styles from "./propose.module.css";

/** Why a food is not there; and what the user has kept out or prefers. */
export function AskForm({
  shown,
  month,
}: {
  readonly shown: NonNullable<ProposalView["shown"]>;
  readonly month: Day;
}) {
  return (
    <section className="sheet">
      <h2>Why not …?</h2>
      <form className={styles.aims} action={`/slate/propose/${month.slice(0, 7)}`}>
        <label>
          <span>A food that is not there</span>
          <select className="field" name="ask" defaultValue="">
            <option value="">Choose a food</option>
            {shown.others.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <button className="btn plain">Ask</button>
      </form>
      {shown.answer !== undefined && <p role="status">{shown.answer}</p>}
      {shown.bans.map(({ id, name }) => (
        <DeskForm key={id} step="unban" month={month} fields={{ itemId: id }}>
          <button className="btn plain slim">Let {name} in again</button>
        </DeskForm>
      ))}
      {shown.preferred.map(({ id, name }) => (
        <DeskForm key={id} step="unprefer" month={month} fields={{ itemId: id }}>
          <button className="btn plain slim">No longer prefer {name}</button>
        </DeskForm>
      ))}
    </section>
  );
}
