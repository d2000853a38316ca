import type { Day } from "#lib/calendar/index.ts";
import { AIM_WORDS, AIMS, type AimPoints } from "#lib/planner/index.ts";
import type { ProposalView } from "#lib/use-cases/proposal/load-proposal.ts";
import { DeskForm } from "./desk-form.client.tsx";
import styles from "./propose.module.css";

/** Two proposals side by side: each aim's points and each week's theme. */
export function Beside({
  shown,
  month,
}: {
  readonly shown: NonNullable<ProposalView["shown"]>;
  readonly month: Day;
}) {
  const { beside } = shown;
  return (
    <section className="sheet">
      <h2>{beside ? "Side by side" : "Compare"}</h2>
      <div className={styles.acts}>
        <DeskForm step="beside" month={month}>
          <button className="btn plain slim">
            {beside ? "Keep this one beside instead" : "Keep this one beside, to compare"}
          </button>
        </DeskForm>
        {beside && (
          <DeskForm step="exchange" month={month}>
            <button className="btn plain slim">Work on the other one</button>
          </DeskForm>
        )}
      </div>
      {beside && (
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">Points for</th>
              <th scope="col">this one</th>
              <th scope="col">the other</th>
            </tr>
          </thead>
          <tbody>
            {AIMS.map((aim) => (
              <tr key={aim}>
                <th scope="row">{AIM_WORDS[aim]}</th>
                <td className="n">{shown.aims[aim].toFixed(0)}</td>
                <td className="n">{beside.aims[aim].toFixed(0)}</td>
              </tr>
            ))}
            <tr>
              <th scope="row">all together</th>
              <td className="n">{total(shown.aims)}</td>
              <td className="n">{total(beside.aims)}</td>
            </tr>
            {shown.weeks.map((week, index) => (
              <tr key={week.monday}>
                <th scope="row">{week.span}</th>
                <td>{week.theme}</td>
                <td>{beside.weeks[index]?.theme}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

function total(aims: AimPoints): string {
  return AIMS.reduce((sum, aim) => sum + aims[aim], 0).toFixed(0);
}
