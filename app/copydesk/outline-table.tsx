import type { BeatView } from "#lib/use-cases/piece-of.ts";
import styles from "./copydesk.module.css";
import { ShownSentence, type Shown } from "./prose.tsx";

/** The outline in two columns, picture and sound, with each beat's place on the clock. */
export function OutlineTable({
  beats,
  running,
  shown,
}: {
  readonly beats: readonly BeatView[];
  readonly running: string;
  readonly shown: Shown;
}) {
  return (
    <div className={styles.scroll} role="region" aria-label="Outline" tabIndex={0}>
      {/* The roles stay a table's where a narrow screen lays its rows out as blocks. */}
      <table className={styles.outline} role="table">
        <caption className="small quiet">
          Runs about {running} at your speaking rate. Times are estimates: from the start, and left
          to the end.
        </caption>
        <thead role="rowgroup">
          <tr role="row">
            <th scope="col" role="columnheader">
              Time
            </th>
            <th scope="col" role="columnheader">
              Picture
            </th>
            <th scope="col" role="columnheader">
              Sound
            </th>
          </tr>
        </thead>
        <tbody role="rowgroup">
          {beats.map((beat, index) => (
            <tr key={index} role="row">
              <th scope="row" role="rowheader" className="num">
                {beat.from}
                <span className={styles.left}>−{beat.left}</span>
              </th>
              <td role="cell">
                <b>{beat.title}</b>
                <p>{beat.picture}</p>
                {beat.holdSeconds > 0 && <p className="quiet num">Hold {beat.holdSeconds} s</p>}
              </td>
              <td role="cell">
                {beat.sound.map((sentence, at) => (
                  <ShownSentence key={at} sentence={sentence} isStopped={false} shown={shown} />
                ))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
