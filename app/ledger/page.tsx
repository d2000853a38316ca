import Link from "next/link";
import { longDay } from "#lib/calendar/index.ts";
import { loadLedger, type LedgerView } from "#lib/use-cases/load-ledger.ts";
import { LedgerSpan } from "#lib/use-cases/load-ledger.input.ts";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import { EatenByPart } from "./charts/eaten-by-part.tsx";
import { EatenOverTime } from "./charts/eaten-over-time.tsx";
import { TrickEffects } from "./charts/trick-effects.tsx";
import { WasteOverTime } from "./charts/waste-over-time.tsx";
import { ChildCard } from "./child-card.tsx";
import { SpanChips } from "./span-chips.tsx";
import { UsedTable } from "./used-table.tsx";
import { count, money, percent } from "./words.ts";
import styles from "./ledger.module.css";

export const metadata = { title: "Ledger" };

/** Lines of a table of what was used; a page of its own has them all. */
const USED = 10;

export default async function Ledger({ searchParams }: PageProps<"/ledger">) {
  const span = LedgerSpan.parse((await searchParams)["span"]);
  const context = await requestContext();
  const view = await loadLedger(context, span);
  return (
    <>
      <PageHead
        kicker={
          view.from === null
            ? "Ledger"
            : `Ledger, ${count(view.verdictCount, "verdict")} since ${longDay(view.from)}`
        }
        title="What the records say"
      >
        <SpanChips room="/ledger" span={span} />
      </PageHead>
      {view.verdictCount === 0 ? <Empty /> : <Figures view={view} />}
      {view.used.foods.length > 0 && (
        <div className={styles.halves}>
          <UsedTable
            what="Theme"
            lines={view.used.themes.slice(0, USED)}
            today={context.today}
            all={{ href: `/ledger/used?span=${span}`, count: view.used.themes.length }}
          />
          <UsedTable
            what="Food"
            lines={view.used.foods.slice(0, USED)}
            today={context.today}
            all={{ href: `/ledger/used?span=${span}`, count: view.used.foods.length }}
          />
        </div>
      )}
    </>
  );
}

function Empty() {
  return (
    <section className="sheet">
      <h2>No verdict yet</h2>
      <p>
        The ledger fills as verdicts are logged: once a tin has come home, say on the{" "}
        <Link href="/verdicts">Verdicts</Link> page how much was eaten and which face it got.
      </p>
    </section>
  );
}

function Figures({ view }: { readonly view: LedgerView }) {
  return (
    <>
      <Strip view={view} />
      <div className={styles.cards}>
        {view.children.map((child) => (
          <ChildCard key={child.id} child={child} />
        ))}
      </div>
      <EatenOverTime view={view} />
      <div className={styles.halves}>
        <EatenByPart view={view} />
        {view.tricks.length > 0 && <TrickEffects view={view} />}
        <WasteOverTime view={view} />
        <Dearest view={view} />
      </div>
    </>
  );
}

/** The four figures that the rest explains. */
function Strip({ view }: { readonly view: LedgerView }) {
  const { waste, children, currency, used } = view;
  const parts = children.flatMap(({ byPart }) => byPart);
  const seen = parts.reduce((sum, { verdicts }) => sum + verdicts, 0);
  const eaten = parts.reduce((sum, { share, verdicts }) => sum + share * verdicts, 0);
  return (
    <dl className={styles.strip}>
      <Fact name="Eaten of what was packed" value={seen > 0 ? percent(eaten / seen) : "–"} />
      <Fact name="Theme weeks" value={String(weeksOf(used.themes))} />
      <Fact name="Foods used" value={String(used.foods.length)} />
      <Fact name="Came back, in money" value={money(waste.wastedCents, currency)} />
    </dl>
  );
}

function weeksOf(themes: LedgerView["used"]["themes"]): number {
  return themes.reduce((sum, { times }) => sum + times, 0);
}

function Fact({ name, value }: { readonly name: string; readonly value: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd className="num">{value}</dd>
    </div>
  );
}

function Dearest({ view }: { readonly view: LedgerView }) {
  return (
    <section className="sheet">
      <h2>Dearest leavings</h2>
      <p className="small quiet">
        At the price noted for the product, else the food’s usual one. What a child left may still
        have been eaten later.
      </p>
      <table>
        <thead>
          <tr>
            <th>Food</th>
            <th className="n">Packed</th>
            <th className="n">Came back</th>
          </tr>
        </thead>
        <tbody>
          {view.dearest.map(({ foodId, food, packedCents, wastedCents }) => (
            <tr key={foodId}>
              <td>
                <Link href={`/ledger/food/${foodId}`} prefetch={false}>
                  {food}
                </Link>
              </td>
              <td className="n">{money(packedCents, view.currency)}</td>
              <td className="n">{money(wastedCents, view.currency)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
