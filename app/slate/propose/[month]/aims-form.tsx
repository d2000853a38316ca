import type { Day } from "#lib/calendar/index.ts";
import { sliderName } from "#lib/use-cases/proposal/change-proposal.input.ts";
import type { ProposalView } from "#lib/use-cases/proposal/load-proposal.ts";
import { DeskForm } from "./desk-form.client.tsx";
import styles from "./propose.module.css";

/** Sliders for what the month aims at, and the button that proposes. */
export function AimsForm({ view, month }: { readonly view: ProposalView; readonly month: Day }) {
  return (
    <section className="sheet">
      <h2>What matters</h2>
      <DeskForm step="propose" month={month} fields={{ scope: "rest" }} className={styles.aims}>
        {view.sliders.map(({ aim, words, at }) => (
          <label key={aim}>
            <span>{words}</span>
            <input
              type="range"
              name={sliderName(aim)}
              min="0"
              max="3"
              step="0.5"
              defaultValue={at}
            />
          </label>
        ))}
        <p className="small quiet">
          Left: does not matter. A third: as usual. Right: matters most.
        </p>
        <button className="btn">
          {view.shown ? "Propose again what is not locked" : "Propose"}
        </button>
      </DeskForm>
    </section>
  );
}
