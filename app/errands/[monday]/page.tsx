import Link from "next/link";
import { notFound } from "next/navigation";
import { addDays, Day, daySpan, mediumDay, mondayOf, weeksLater } from "#lib/calendar/index.ts";
import {
  lastErrandWeek,
  loadErrands,
  type ErrandsView,
} from "#lib/use-cases/errands/load-errands.ts";
import { loadOwed } from "#lib/use-cases/errands/load-owed.ts";
import { requestContext } from "#app/_server/context.ts";
import sheet from "#app/_ui/one-page.module.css";
import { PageHead } from "#app/_ui/page-head.tsx";
import { PrintButton } from "#app/_ui/print-button.client.tsx";
import { ThemeTitle } from "#app/_ui/theme-title.tsx";
import { AskForm } from "../ask-form.client.tsx";
import { RunsDesk } from "../runs-desk.client.tsx";
import { WeekNotes } from "../week-notes.tsx";

export default async function ErrandsWeek({ params }: PageProps<"/errands/[monday]">) {
  const monday = Day.safeParse((await params).monday);
  if (!monday.success || mondayOf(monday.data) !== monday.data) notFound();
  const context = await requestContext();
  const [view, owed] = await Promise.all([loadErrands(context, monday.data), loadOwed(context)]);
  if (!view) notFound();
  const first = mondayOf(context.today);
  return (
    <>
      <PageHead
        kicker={`Errands for the lunches of ${daySpan(view.monday, addDays(view.monday, 4))}`}
        title={view.monday === first ? "This week’s errands" : headingOf(view, first)}
      >
        {view.monday > first && (
          <Link className="btn plain" href={`/errands/${weeksLater(view.monday, -1)}`}>
            Week before
          </Link>
        )}
        {view.monday < lastErrandWeek(context.today) && (
          <Link className="btn plain" href={`/errands/${weeksLater(view.monday, 1)}`}>
            Week after
          </Link>
        )}
        <Link className="btn plain" href="/errands/stock">
          Stock
        </Link>
        <PrintButton label="Print one page" />
      </PageHead>
      <article className={sheet.page}>
        <Top view={view} />
        <Asks view={view} />
        <Runs view={view} />
        <WeekNotes view={view} owed={owed} />
      </article>
    </>
  );
}

function headingOf({ monday }: ErrandsView, first: Day): string {
  return monday === weeksLater(first, 1) ? "Next week’s errands" : "Errands ahead";
}

function Top({ view }: { readonly view: ErrandsView }) {
  const open = view.runs.flatMap((run) => run.aisles.flatMap((aisle) => aisle.lines));
  const left = open.filter((line) => line.state === "open").length;
  return (
    <div className={sheet.title}>
      <dl className={sheet.facts}>
        <dt>Runs</dt>
        <dd>{view.runs.length}</dd>
        <dt>Lines</dt>
        <dd>
          {left} open of {open.length}
        </dd>
      </dl>
      <div className={sheet.name}>
        <p className="small quiet">Shopping for {daySpan(view.monday, addDays(view.monday, 4))}</p>
        <ThemeTitle name={view.title ?? "Nothing pencilled"} as="p" />
      </div>
      <dl className={sheet.facts}>
        <dt>Cost</dt>
        <dd>{view.cost.sentence}</dd>
      </dl>
    </div>
  );
}

/** What has to be said before an item can be counted, and what cannot be had. */
function Asks({ view }: { readonly view: ErrandsView }) {
  if (view.asks.length + view.unmet.length === 0 && view.hasShops && view.hasChildren) return null;
  return (
    <div className={sheet.box}>
      {view.asks.length > 0 && (
        <section aria-label="Questions">
          <h2>Noonbook has to ask</h2>
          <p className="small quiet">These are not on the lists until they are answered.</p>
          {view.asks.map((ask) => (
            <div key={ask.itemId}>
              <p>
                {mediumDay(ask.day)}, {ask.food}: {ask.question}
              </p>
              {ask.isWeight ? (
                <AskForm ask={ask} />
              ) : (
                <p>
                  <Link href={`/slate/week/${view.monday}#${ask.day}`}>Change the lunch</Link>
                </p>
              )}
            </div>
          ))}
        </section>
      )}
      {view.unmet.length > 0 && (
        <section aria-label="Cannot be had">
          <h2>Cannot be had in time</h2>
          <ul>
            {view.unmet.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </section>
      )}
      {!view.hasShops && (
        <p className="small">
          No shop is on record, so everything is on one list for any shop. Name your shops, their
          days and aisles in the <Link href="/bible">series bible</Link>.
        </p>
      )}
      {!view.hasChildren && (
        <p className="small">
          No child is on record: amounts are counted for one. Name the children in the{" "}
          <Link href="/bible">series bible</Link>.
        </p>
      )}
    </div>
  );
}

function Runs({ view }: { readonly view: ErrandsView }) {
  if (view.runs.length === 0) {
    return (
      <div className={sheet.box}>
        <p>
          {view.hasLunches
            ? "Nothing to buy: what these lunches need is at home."
            : "No lunch of this week is composed yet, so nothing is needed."}
        </p>
        {!view.hasLunches && (
          <p className="noprint">
            <Link className="btn" href={`/slate/${view.monday.slice(0, 7)}`}>
              Open the slate
            </Link>
          </p>
        )}
      </div>
    );
  }
  const made = view.runs.filter((run) => !run.isOver && !run.isDone);
  return (
    <RunsDesk
      monday={view.monday}
      runs={view.runs}
      currency={view.currency}
      trips={[...made, ...view.otherTrips].map(({ shopId, shopName, day }) => ({
        ...{ shopId, shopName, day },
      }))}
    />
  );
}
