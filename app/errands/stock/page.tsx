import Link from "next/link";
import { PLACES, LIFE_CAUTION } from "#lib/shopping/index.ts";
import { loadOwed } from "#lib/use-cases/errands/load-owed.ts";
import {
  loadStock,
  openedFor,
  type LotView,
  type StockView,
} from "#lib/use-cases/errands/load-stock.ts";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { PrintButton } from "#app/_ui/print-button.client.tsx";
import { OwedList } from "../owed-list.client.tsx";
import { AddLotForm } from "./add-lot-form.client.tsx";
import { LotLine } from "./lot-line.client.tsx";
import { ParForm } from "./par-form.client.tsx";
import styles from "./stock.module.css";

/** Days to its last day from which a lot stands under "use first". */
const SOON_DAYS = 4;
const PLACE_NAMES = { pantry: "Pantry", fridge: "Fridge", freezer: "Freezer" } as const;

export default async function StockPage() {
  const context = await requestContext();
  const [stock, owed] = await Promise.all([loadStock(context), loadOwed(context)]);
  const line = (lot: LotView) => (
    <LotLine
      key={`${lot.id} ${lot.grams} ${lot.useBy ?? ""} ${lot.place}`}
      lot={lot}
      opened={openedFor(lot, context.today)}
    />
  );
  const soon = stock.lots.filter((lot) => lot.daysLeft !== null && lot.daysLeft <= SOON_DAYS);
  const rest = stock.lots.filter((lot) => !soon.includes(lot));
  return (
    <>
      <PageHead kicker="Errands, stock" title="What is in the house">
        <Link className="btn plain" href="/errands">
          Back to the runs
        </Link>
        <PrintButton label="Print the list" />
      </PageHead>
      <div className={styles.grid}>
        <article className={styles.sheet}>
          <section className={styles.box}>
            <h2>Use first</h2>
            {soon.length === 0 ? (
              <p className="small quiet">Nothing ends within {SOON_DAYS} days.</p>
            ) : (
              <ul>{soon.map(line)}</ul>
            )}
            <p className="small quiet">{LIFE_CAUTION}</p>
          </section>
          {PLACES.map((place) => (
            <section className={styles.box} key={place}>
              <h2>{PLACE_NAMES[place]}</h2>
              {rest.some((lot) => lot.place === place) ? (
                <ul>{rest.filter((lot) => lot.place === place).map(line)}</ul>
              ) : (
                <p className="small quiet">Nothing {soon.length > 0 ? "else " : ""}on record.</p>
              )}
            </section>
          ))}
        </article>
        <aside className={styles.rail} aria-label="Owed, staples and new stock">
          <section className="sheet">
            <h2>Owed</h2>
            <OwedList owed={owed} />
          </section>
          <section className="sheet noprint">
            <h2>Put something in</h2>
            <AddLotForm />
          </section>
          <Pars stock={stock} />
        </aside>
      </div>
    </>
  );
}

function Pars({ stock }: { readonly stock: StockView }) {
  return (
    <section className="sheet">
      <h2>Staples kept at a level</h2>
      <p className="small quiet">
        Level = use a day × (days to notice + 7 days between runs) + reserve. What is missing comes
        on the week’s list.
      </p>
      {stock.pars.length === 0 && <p className="small">No staple has a level yet.</p>}
      <ul className={styles.pars}>
        {stock.pars.map((par) => (
          <li key={par.foodId}>
            <details>
              <summary>
                <strong>{par.name}</strong>: {par.onHand} of {par.level}
                {par.missing !== "" && `, ${par.missing} missing`}
              </summary>
              <ParForm par={par} />
            </details>
          </li>
        ))}
      </ul>
      <details className="noprint">
        <summary>Keep another staple</summary>
        <ParForm />
      </details>
      {stock.suggestions.length > 0 && (
        <p className="small quiet">
          Used most in the last eight weeks, a day:{" "}
          {stock.suggestions.map(({ name, gramsPerDay }) => `${name} ${gramsPerDay} g`).join(", ")}.
        </p>
      )}
    </section>
  );
}
