import Link from "next/link";
import { notFound } from "next/navigation";
import { Day, longDay, longWeekday, shortDay } from "#lib/calendar/index.ts";
import { loadDay, type DayView } from "#lib/use-cases/load-day.ts";
import { loadMise, type MiseView } from "#lib/use-cases/load-mise.ts";
import { loadReadyLunch } from "#lib/use-cases/load-ready-lunch.ts";
import { inTheTray } from "#lib/use-cases/lunch-view.ts";
import { requestContext } from "#app/_server/context.ts";
import { machineZone } from "#app/_server/zone.ts";
import { ChecksPanel } from "#app/_checks/checks-panel.tsx";
import { HealthCaution } from "#app/_ui/health-caution.tsx";
import { Clocks } from "#app/_ui/clocks.tsx";
import sheet from "#app/_ui/one-page.module.css";
import { NoLunch } from "#app/_ui/no-lunch.tsx";
import { PageHead } from "#app/_ui/page-head.tsx";
import { PrintButton } from "#app/_ui/print-button.client.tsx";
import { ThemeTitle } from "#app/_ui/theme-title.tsx";
import { Tray } from "#app/_ui/tray.tsx";
import { PackForm } from "../pack-form.client.tsx";
import { PlanB, PrepLeft } from "../prep-left.tsx";
import { SwapBack } from "../swap-back.client.tsx";
import { SwapForm } from "../swap-form.client.tsx";
import styles from "../callsheet.module.css";

export default async function CallSheet({ params }: PageProps<"/callsheet/[date]">) {
  const date = Day.safeParse((await params).date);
  if (!date.success) notFound();
  const context = await requestContext();
  const [view, mise, ready] = await Promise.all([
    loadDay(context, date.data),
    loadMise(context, date.data, machineZone()),
    loadReadyLunch(context, date.data),
  ]);
  if (!view || !mise) return <NoLunch room="Call sheet" date={date.data} />;
  return (
    <>
      <PageHead kicker="Call sheet" title={`${longWeekday(view.date)}’s shoot`}>
        {view.dayBefore && (
          <Link className="btn plain" href={`/callsheet/${view.dayBefore}`}>
            {shortDay(view.dayBefore)}
          </Link>
        )}
        {view.dayAfter && (
          <Link className="btn plain" href={`/callsheet/${view.dayAfter}`}>
            {shortDay(view.dayAfter)}
          </Link>
        )}
        <PrintButton label="Print one page" />
      </PageHead>
      <article className={sheet.page}>
        <Top view={view} mise={mise} />
        <div className={styles.tray}>
          <section className={sheet.box}>
            <h2>The tray</h2>
            <Tray compartments={inTheTray(view.items).map((item) => ({ ...item, key: item.id }))} />
            <p className="small quiet">Areas follow the portions.</p>
          </section>
          <PackList view={view} />
        </div>
        <div className={styles.halves}>
          <PrepLeft mise={mise} />
          <div className={styles.stack}>
            <section className={sheet.box}>
              <h2>Shots</h2>
              <Shots view={view} />
            </section>
            <section className={sheet.box}>
              <h2>Reminders</h2>
              <ul>
                {view.reminders.map((line) => (
                  <li key={line}>{line}</li>
                ))}
              </ul>
            </section>
            <PlanB mise={mise} ready={ready} />
          </div>
        </div>
        <section className={`${sheet.box} ${styles.checks}`}>
          <ChecksPanel lunchId={view.lunchId} findings={view.findings} />
          <HealthCaution unset={view.unset} />
        </section>
        <div className={`${styles.halves} noprint`}>
          <section className={sheet.box}>
            <h2>The lid</h2>
            <PackForm lunchId={view.lunchId} isPacked={view.isPacked} minutes={view.minutesUsed} />
          </section>
          <section className={sheet.box}>
            <h2>Swap</h2>
            <SwapBack items={view.items.filter((item) => item.fate === "scrapped")} />
            <SwapForm items={view.items.filter((item) => item.fate !== "scrapped")} />
            {view.isPacked && (
              <p className="small quiet">
                The lid is shut: what comes out is at home again and owed, what steps in is taken
                from stock.
              </p>
            )}
          </section>
        </div>
      </article>
    </>
  );
}

function Top({ view, mise }: { readonly view: DayView; readonly mise: MiseView }) {
  const { episode, times } = view;
  return (
    <>
      <div className={sheet.title}>
        <dl className={sheet.facts}>
          <dt>Episode</dt>
          <dd>{episode.number}</dd>
          <dt>Day</dt>
          <dd>
            {episode.lunchNumber} of {episode.lunchCount}
          </dd>
          <dt>Stage</dt>
          <dd>{episode.stage}</dd>
        </dl>
        <div className={sheet.name}>
          <p className="small quiet">Call sheet for {longDay(view.date)}</p>
          <ThemeTitle name={episode.title} as="p" />
          <p>
            Lunch {episode.lunchNumber}
            {view.angle && (
              <>
                , <strong>{view.angle}</strong>
              </>
            )}
          </p>
        </div>
        <dl className={sheet.facts}>
          <dt>Cooks</dt>
          <dd>{times.cooks}</dd>
          <dt>Lid</dt>
          <dd>{view.isPacked ? "shut" : "open"}</dd>
        </dl>
      </div>
      <Clocks
        clocks={[
          { name: "Kitchen call", value: times.morningFrom },
          { name: "Latest start", value: mise.times.latestStart },
          ...(mise.times.packing ? [{ name: "Packing", value: mise.times.packing }] : []),
          { name: "Out of the door", value: times.departure, isKey: true },
          { name: "Verdict shot", value: times.verdictAt },
        ]}
      />
    </>
  );
}

function PackList({ view }: { readonly view: DayView }) {
  return (
    <section className={sheet.box}>
      <h2>Pack list</h2>
      <div className={styles.scroll} role="region" aria-label="Pack list" tabIndex={0}>
        <table>
          <thead>
            <tr>
              <th>Item</th>
              <th>Part</th>
              {view.children.map((child) => (
                <th className="n" key={child.id}>
                  {child.name}
                </th>
              ))}
              <th>Keep</th>
            </tr>
          </thead>
          <tbody>
            {view.items.map((item) => (
              <tr key={item.id}>
                <td>
                  <strong>{item.fate === "scrapped" ? <s>{item.name}</s> : item.name}</strong>
                  {item.tricks.length > 0 &&
                    `, ${item.tricks.map((trick) => trick.name).join(", ")}`}
                  {item.fate === "scrapped" && ` (scrapped: ${item.reason})`}
                  {item.fate === "stepped-in" &&
                    ` (stepped in${item.insteadOf === null ? "" : ` for ${item.insteadOf}`})`}
                </td>
                <td>{item.part}</td>
                {view.children.map((child) => (
                  <td className="n" key={child.id}>
                    {item.fate === "scrapped"
                      ? "–"
                      : `${Math.round(item.grams * child.portionFactor)} g`}
                  </td>
                ))}
                <td>{item.keep}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {view.items.length === 0 && (
        <p className="quiet">Nothing in the tin yet: compose it on the slate.</p>
      )}
    </section>
  );
}

function Shots({ view }: { readonly view: DayView }) {
  const items = view.items.filter((item) => item.fate !== "scrapped");
  const tricks = items.filter((item) => item.tricks.length > 0);
  const shots = [
    "Empty tin, top down, lid to the left",
    ...items.slice(0, 1).map((item) => `First in the tin: ${item.name}`),
    ...tricks.map(
      (item) =>
        `${item.name}: ${item.tricks.map((trick) => trick.name).join(", ")}, close, two takes`,
    ),
    "The full tin, hero shot, then the lid",
    ...view.children.map((child) => `${child.name} opens the tin at home`),
  ];
  return (
    <ol>
      {shots.map((shot, index) => (
        <li key={shot}>
          <strong>
            {view.episode.number}-{view.episode.lunchNumber}
            {String.fromCharCode(65 + index)}
          </strong>{" "}
          {shot}
        </li>
      ))}
    </ol>
  );
}
