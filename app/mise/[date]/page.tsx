import Link from "next/link";
import { notFound } from "next/navigation";
import {
  addDays,
  ClockTime,
  Day,
  longDay,
  longWeekday,
  minutesOfDay,
  shortDay,
} from "#lib/calendar/index.ts";
import { loadMise, type MiseStep, type MiseView } from "#lib/use-cases/load-mise.ts";
import { requestContext } from "#app/_server/context.ts";
import { machineZone } from "#app/_server/zone.ts";
import { Clocks } from "#app/_ui/clocks.tsx";
import sheet from "#app/_ui/one-page.module.css";
import { NoLunch } from "#app/_ui/no-lunch.tsx";
import { PageHead } from "#app/_ui/page-head.tsx";
import { PrintButton } from "#app/_ui/print-button.client.tsx";
import { ThemeTitle } from "#app/_ui/theme-title.tsx";
import { ReplanForm } from "../replan-form.client.tsx";
import { stepNotes } from "../step-notes.ts";
import { StepRow } from "../step-row.client.tsx";
import { Timeline } from "../timeline.tsx";
import styles from "../mise.module.css";

export default async function MisePage({ params, searchParams }: PageProps<"/mise/[date]">) {
  const date = Day.safeParse((await params).date);
  const from = ClockTime.optional().safeParse((await searchParams)["from"]);
  if (!date.success || !from.success) notFound();
  const context = await requestContext();
  const view = await loadMise(context, date.data, machineZone(), from.data);
  if (!view) return <NoLunch room="Mise" date={date.data} />;
  return (
    <>
      <PageHead kicker="Mise" title={`Prep for ${longWeekday(view.date)}`}>
        {view.dayBefore && (
          <Link className="btn plain" href={`/mise/${view.dayBefore}`}>
            {shortDay(view.dayBefore)}
          </Link>
        )}
        {view.dayAfter && (
          <Link className="btn plain" href={`/mise/${view.dayAfter}`}>
            {shortDay(view.dayAfter)}
          </Link>
        )}
        <a className="btn plain" href={`/mise/${view.date}/calendar.ics`} download>
          Calendar file
        </a>
        <PrintButton label="Print one page" />
      </PageHead>
      <article className={sheet.page}>
        <Top view={view} />
        <Troubles view={view} />
        <Evening view={view} />
        <Morning view={view} />
        <div className={styles.thirds}>
          <PlanB view={view} />
          <Certain view={view} />
          <section className={`${sheet.box} noprint`}>
            <h2>Change of plan</h2>
            <ReplanForm key={view.from} date={view.date} zone={view.zone} />
            {view.from !== null && (
              <p className="small">
                <Link href={`/mise/${view.date}`}>Back to the plan from the start</Link>
              </p>
            )}
            <p className="small quiet">Ticked steps stay ticked and are not planned again.</p>
            <h2>In your calendar</h2>
            <p className="small">
              Prep, departures and shopping days with alarms, six weeks ahead: let a calendar
              subscribe to <a href="/mise/calendar.ics">/mise/calendar.ics</a> at this address.
              Times are those of {view.zone}.
            </p>
          </section>
        </div>
      </article>
    </>
  );
}

function Top({ view }: { readonly view: MiseView }) {
  const { times, episode } = view;
  return (
    <>
      <div className={styles.lead}>
        <div>
          <p className="small quiet">
            Mise for {longDay(view.date)}, episode {episode.number}, {episode.stage}; lid{" "}
            {view.isPacked ? "shut" : "open"}
          </p>
          <ThemeTitle name={episode.title} as="p" />
        </div>
        <p>
          {view.cooks === 1 ? "1 cook" : `${view.cooks} cooks`}, {view.handsOnMinutes} of{" "}
          {view.handsOnMinutesMax} hands-on minutes in the morning
          {view.handsOnMinutes > view.handsOnMinutesMax && <strong>: more than there are</strong>}
        </p>
      </div>
      <Clocks
        clocks={[
          ...(times.eveningLatest
            ? [{ name: "Evening, latest start", value: times.eveningLatest }]
            : []),
          { name: "Morning, latest start", value: times.latestStart },
          ...(times.packing ? [{ name: "Packing", value: times.packing }] : []),
          { name: "Out of the door", value: times.departure, isKey: true },
        ]}
      />
    </>
  );
}

function Troubles({ view }: { readonly view: MiseView }) {
  if (view.troubles.length === 0) return null;
  return (
    <section className={sheet.box} aria-label="What does not work out">
      <ul className={styles.troubles}>
        {view.troubles.map((trouble) => (
          <li key={trouble}>{trouble}</li>
        ))}
      </ul>
    </section>
  );
}

function Evening({ view }: { readonly view: MiseView }) {
  const { evening, date, zone } = view;
  return (
    <section className={sheet.box}>
      <h2>{longWeekday(addDays(date, -1))} evening</h2>
      {evening.length === 0 ? (
        <p className="quiet">Nothing to do the night before.</p>
      ) : (
        <>
          <Timeline
            label="The evening by cook and appliance; the list below says the same."
            {...{ steps: evening, firstNumber: 1, date, zone }}
          />
          <Steps part="evening" view={view} steps={evening} firstNumber={1} />
        </>
      )}
    </section>
  );
}

function Morning({ view }: { readonly view: MiseView }) {
  const { evening, morning, done, date, zone } = view;
  return (
    <section className={sheet.box}>
      <h2>
        {longWeekday(date)} morning
        {view.from !== null && <small> planned anew from {view.from}</small>}
      </h2>
      {morning.length === 0 ? (
        <p className="quiet">
          {done.length > 0
            ? "Everything is done."
            : "Nothing in the tin yet: compose it on the slate."}
        </p>
      ) : (
        <>
          <Timeline
            label="The morning by cook and appliance; the list below says the same."
            steps={morning}
            firstNumber={evening.length + 1}
            until={minutesOfDay(view.times.departure)}
            {...{ date, zone }}
          />
          <Steps part="morning" view={view} steps={morning} firstNumber={evening.length + 1} />
        </>
      )}
      {done.length > 0 && (
        <p className="small quiet">
          Done: {done.map(({ line, at }) => `${line} (${at})`).join("; ")}.
        </p>
      )}
    </section>
  );
}

function Steps({
  part,
  view,
  steps,
  firstNumber,
}: {
  readonly part: "evening" | "morning";
  readonly view: MiseView;
  readonly steps: readonly MiseStep[];
  readonly firstNumber: number;
}) {
  return (
    <ol className={styles.steps}>
      {steps.map((step, index) => (
        <StepRow
          // A tick made elsewhere is shown here too.
          key={`${step.id} ${step.tick ? `${step.tick.minutes}` : "open"}`}
          lunchId={view.lunchId}
          stepKey={step.id}
          number={firstNumber + index}
          line={step.line}
          times={`${step.starts}–${step.ends}`}
          notes={stepNotes(step, { cooks: view.cooks, part })}
          minutes={step.minutes}
          isDone={step.tick !== null}
          took={step.tick?.minutes ?? null}
          isCritical={step.isCritical}
        />
      ))}
    </ol>
  );
}

function PlanB({ view }: { readonly view: MiseView }) {
  return (
    <section className={sheet.box}>
      <h2>If it gets late</h2>
      {view.planB.length === 0 && <p className="quiet">There is nothing to leave out.</p>}
      <ul>
        {view.planB.map(({ late, sentence }) => (
          <li key={late}>
            <strong>Late by {late} min:</strong> {sentence}
          </li>
        ))}
      </ul>
      {view.planB.length > 0 && (
        <p className="small noprint">
          <Link href={`/callsheet/${view.date}`}>Swap on the call sheet</Link>
        </p>
      )}
    </section>
  );
}

function Certain({ view }: { readonly view: MiseView }) {
  return (
    <section className={sheet.box}>
      <h2>How sure</h2>
      <ul>
        <li>{view.proof}</li>
        {view.critical.length > 0 && <li>Critical chain: {view.critical.join(" → ")}.</li>}
        {view.eveningProof && <li>{view.eveningProof}</li>}
        <li className="quiet">
          Usual times are common practice; the minutes you write under “took” teach the next plan.
        </li>
      </ul>
    </section>
  );
}
