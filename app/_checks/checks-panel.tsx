import { Icon } from "#app/_ui/icon.tsx";
import { describeMark, type FindingLevel } from "#lib/safety/index.ts";
import type { FindingView } from "#lib/use-cases/read-checks.ts";
import { KeepForm, TakeUpButton } from "./keep-form.client.tsx";
import styles from "./checks.module.css";

/** What the checks say of a lunch: most serious first, quiet notes and kept ones folded away. */
export function ChecksPanel({
  lunchId,
  findings,
}: {
  readonly lunchId: string;
  readonly findings: readonly FindingView[];
}) {
  const kept = findings.filter(({ keptBecause }) => keptBecause !== null);
  const open = findings.filter(({ keptBecause }) => keptBecause === null);
  const loud = open.filter(({ level }) => level !== "note");
  const notes = open.filter(({ level }) => level === "note");
  return (
    <section className={styles.panel} aria-label="Checks">
      <h3>Checks</h3>
      {loud.length === 0 && (
        <p className="small quiet">Nothing on record speaks against this lunch.</p>
      )}
      <List lunchId={lunchId} findings={loud} />
      <Folded summary={countOf(notes.length, "quiet note")} lunchId={lunchId} findings={notes} />
      <Folded summary={countOf(kept.length, "kept", "kept")} lunchId={lunchId} findings={kept} />
    </section>
  );
}

function Folded({
  summary,
  lunchId,
  findings,
}: {
  readonly summary: string;
  readonly lunchId: string;
  readonly findings: readonly FindingView[];
}) {
  if (findings.length === 0) return null;
  return (
    <details className={styles.fold}>
      <summary>{summary}</summary>
      <List lunchId={lunchId} findings={findings} />
    </details>
  );
}

function List({
  lunchId,
  findings,
}: {
  readonly lunchId: string;
  readonly findings: readonly FindingView[];
}) {
  if (findings.length === 0) return null;
  return (
    <ul className={styles.list}>
      {findings.map((finding) => (
        <li key={finding.key}>
          <p>
            <LevelTag level={finding.level} /> {finding.sentence}
          </p>
          {finding.remedy && <p className="small quiet">{finding.remedy}</p>}
          {finding.standIns && finding.standIns.names.length > 0 && (
            <p className="small quiet">
              For {finding.standIns.forFood} could step in, once the label is read:{" "}
              {finding.standIns.names.join(", ")}.
            </p>
          )}
          {finding.keptBecause !== null && <p className="small">Kept: “{finding.keptBecause}”</p>}
          <div className={`${styles.folds} noprint`}>
            <details className={styles.fold}>
              <summary>Source</summary>
              <ul className={styles.sources}>
                {finding.cites.map(({ title, where, mark }) => (
                  <li key={title}>
                    {title}: {where} ({describeMark(mark)}).
                  </li>
                ))}
              </ul>
            </details>
            {finding.mayKeep && finding.keptBecause === null && finding.level !== "note" && (
              <details className={styles.fold}>
                <summary>I know, keep it</summary>
                <KeepForm lunchId={lunchId} findingKey={finding.key} />
              </details>
            )}
            {finding.keptBecause !== null && (
              <TakeUpButton lunchId={lunchId} findingKey={finding.key} />
            )}
          </div>
        </li>
      ))}
    </ul>
  );
}

const LEVEL_WORDS: Readonly<Record<FindingLevel, string>> = {
  stop: "Broken rule",
  look: "Look",
  note: "Note",
};

function LevelTag({ level }: { readonly level: FindingLevel }) {
  return (
    <span className={level === "stop" ? "tag broken" : "tag"}>
      <Icon name={level === "stop" ? "stop" : "eye"} />
      {LEVEL_WORDS[level]}
    </span>
  );
}

function countOf(count: number, one: string, several = `${one}s`): string {
  return `${count} ${count === 1 ? one : several}`;
}
