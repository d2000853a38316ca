import { mediumDay } from "#lib/calendar/index.ts";
import type { BibleView } from "#lib/use-cases/bible/load-bible.ts";
import styles from "./bible.module.css";
import { SheetFrame } from "./sheet-frame.tsx";
import { weekdayWords } from "./words.ts";

type Settings = BibleView["settings"];
type Fact = readonly [name: string, said: string];
const NOT_SAID = "not said";

/** School days, the hours of a school day, the days off to come. */
export function DaysFacts({
  settings,
  daysOff,
}: {
  readonly settings: Settings;
  readonly daysOff: BibleView["daysOff"];
}) {
  const off = daysOff.map(({ from, to, label }) =>
    from === to
      ? `${mediumDay(from)}: ${label}`
      : `${mediumDay(from)} – ${mediumDay(to)}: ${label}`,
  );
  return (
    <SheetFrame id="days" title="Days" href="/bible/days" link="Change the days">
      <Facts
        facts={[
          ["Packed lunches on", weekdayWords(settings.schoolDays)],
          ["Out of the door at", settings.departure],
          ["Lunch is eaten at", settings.lunchAt],
          ["Verdicts from", settings.verdictAt],
          ["Time zone", settings.timeZone ?? "that of this computer"],
          ["Days off to come", off.join("\n") || NOT_SAID],
        ]}
      />
    </SheetFrame>
  );
}

/** The series and how it speaks. */
export function SeriesFacts({
  name,
  settings,
}: {
  readonly name: string;
  readonly settings: Settings;
}) {
  return (
    <SheetFrame id="series" title="The series" href="/bible/series" link="Change the series">
      <Facts
        facts={[
          ["Name", name],
          ["Sign-on", settings.signOn || NOT_SAID],
          ["Sign-off", settings.signOff || NOT_SAID],
          ["House phrases", settings.housePhrases.join("\n") || NOT_SAID],
          ["Running features", settings.runningFeatures.join("\n") || NOT_SAID],
          ["Spoken at", `${settings.wordsPerMinute} words a minute`],
          ["Tone", `${settings.tone}, ${settings.emoji ? "with emoji" : "no emoji"}`],
        ]}
      />
    </SheetFrame>
  );
}

/** What there is of time, money, hands and appliances; how fast something may come back. */
export function LimitsFacts({ settings }: { readonly settings: Settings }) {
  const cents = settings.weekBudgetCents;
  const appliances = Object.entries(settings.appliances)
    .filter(([, count]) => count > 0)
    .map(([name, count]) => (count > 1 ? `${name} × ${count}` : name));
  return (
    <SheetFrame id="limits" title="Limits" href="/bible/limits" link="Change the limits">
      <Facts
        facts={[
          ["Morning", `${settings.morningMinutes} hands-on minutes, from ${settings.morningFrom}`],
          ["Evening", `${settings.eveningFrom} to ${settings.bedtime}`],
          ["Cooks", String(settings.cooks)],
          ["Appliances", appliances.join(", ") || "none"],
          [
            "Budget a week",
            cents === null ? NOT_SAID : `${settings.currency} ${(cents / 100).toFixed(2)}`,
          ],
          [
            "New foods",
            `${settings.newFoodsPerLunchMax} a lunch and ${settings.newFoodsPerWeekMax} a week at most; discoveries ${settings.wantsDiscoveries ? "wanted" : "not wanted now"}`,
          ],
          [
            "Rest in days",
            `theme ${settings.themeRestDays}, product ${settings.productRestDays}, food ${settings.foodRestDays}, family ${settings.familyRestDays}, trick ${settings.trickRestDays}`,
          ],
        ]}
      />
    </SheetFrame>
  );
}

/** What may leave the house, and in what lengths. Private words are counted, never listed here. */
export function PublicFacts({ settings }: { readonly settings: Settings }) {
  const words = settings.privateWords.length;
  return (
    <SheetFrame
      id="public"
      title="What may leave"
      href="/bible/public"
      link="Change what may leave"
    >
      <Facts
        facts={[
          ["Private words", `${words} kept out of every draft; shown on their own page only`],
          ["Title", `${settings.titleMax} letters at most`],
          ["Description", `${settings.descriptionMax} letters at most`],
          ["First lines", `${settings.firstLinesMax} letters seen before the rest unfolds`],
          ["Law, as I noted it", settings.lawNote || NOT_SAID],
        ]}
      />
    </SheetFrame>
  );
}

function Facts({ facts }: { readonly facts: readonly Fact[] }) {
  return (
    <dl className={styles.facts}>
      {facts.map(([name, said]) => (
        <div key={name} style={{ display: "contents" }}>
          <dt>{name}</dt>
          <dd className={said === NOT_SAID ? "quiet" : undefined}>{said}</dd>
        </div>
      ))}
    </dl>
  );
}
