import Link from "next/link";
import { notFound } from "next/navigation";
import { Day, monthTitle } from "#lib/calendar/index.ts";
import { findObstacles } from "#lib/use-cases/proposal/find-obstacles.ts";
import { loadProposal, type ProposalView } from "#lib/use-cases/proposal/load-proposal.ts";
import { requestContext } from "#app/_server/context.ts";
import { HealthCaution } from "#app/_ui/health-caution.tsx";
import { PageHead } from "#app/_ui/page-head.tsx";
import { AimsForm } from "./aims-form.tsx";
import { AskForm } from "./ask-form.tsx";
import { Beside } from "./beside.tsx";
import { DeskForm } from "./desk-form.client.tsx";
import { Improve } from "./improve.client.tsx";
import { Picked } from "./picked.tsx";
import { proofWords } from "./proof-words.ts";
import { ProposedWeeks } from "./proposed-weeks.tsx";
import styles from "./propose.module.css";

export default async function ProposePage({
  params,
  searchParams,
}: PageProps<"/slate/propose/[month]">) {
  const month = Day.safeParse(`${(await params).month}-01`);
  if (!month.success) notFound();
  const { date, item, ask, why } = await searchParams;
  const day = Day.safeParse(date);
  const context = await requestContext();
  const view = await loadProposal(context, month.data, {
    ...(day.success && typeof item === "string" ? { pick: { date: day.data, itemId: item } } : {}),
    ...(typeof ask === "string" && ask !== "" ? { ask } : {}),
  });
  const obstacles = why === undefined ? undefined : await findObstacles(context, month.data);
  return (
    <>
      <PageHead kicker="Slate, proposal" title={monthTitle(month.data)}>
        <Link className="btn plain" href={`/slate/${month.data.slice(0, 7)}`}>
          Back to the slate
        </Link>
        {view.shown?.canUndo && (
          <DeskForm step="undo" month={month.data}>
            <button className="btn plain">Undo the last step</button>
          </DeskForm>
        )}
        {view.shown && (
          <DeskForm step="take" month={month.data} fields={{ stamp: view.shown.stamp }}>
            <button className="btn" disabled={view.shown.proof.broken > 0}>
              Take it
            </button>
          </DeskForm>
        )}
      </PageHead>
      <div className={styles.desk}>
        <div className={styles.main}>
          {view.moments.length > 0 && <p className="sheet">{view.moments.join(". ")}.</p>}
          <Main view={view} month={month.data} />
          {obstacles && (
            <section className="sheet broken">
              <h2>What stands in the way</h2>
              <ul>
                {obstacles.fixes.map((fix) => (
                  <li key={fix}>{fix}</li>
                ))}
              </ul>
              <p className="small quiet">{obstacles.rules}</p>
            </section>
          )}
          {why !== undefined && !obstacles && (
            <p className="sheet">A plan that keeps every rule exists. Propose again to find one.</p>
          )}
          <HealthCaution />
        </div>
        <aside className={styles.rail} aria-label="What the proposal aims at">
          {view.openCount > 0 && <AimsForm view={view} month={month.data} />}
          {view.shown && <AskForm shown={view.shown} month={month.data} />}
        </aside>
      </div>
    </>
  );
}

function Main({ view, month }: { readonly view: ProposalView; readonly month: Day }) {
  if (view.openCount === 0) {
    return (
      <p className="sheet">
        Every week of this month that is still to come has its episode. Remove one on the slate to
        have it proposed anew.
      </p>
    );
  }
  if (!view.shown) {
    return (
      <p className="sheet">
        {view.openCount === 1 ? "One week is" : `${view.openCount} weeks are`} empty. Set what
        matters and propose: nothing is written to the slate until you take it.
      </p>
    );
  }
  const { shown } = view;
  return (
    <>
      <section className="sheet" aria-label="How good this proposal is">
        <Improve month={month} start={proofWords(shown.proof)} isFresh={shown.proof.isFresh} />
        {shown.proof.broken > 0 && (
          <p>
            <Link href={`/slate/propose/${month.slice(0, 7)}?why=1`}>
              Find out which rules stand in the way
            </Link>
          </p>
        )}
      </section>
      {shown.picked && <Picked picked={shown.picked} month={month} />}
      <ProposedWeeks weeks={shown.weeks} month={month} picked={shown.picked} />
      <Beside shown={shown} month={month} />
    </>
  );
}
