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
      <table className={styles.outline}>
        <caption className="small quiet">
          Runs about {running} at your speaking rate. Times are estimates: from the start, and left
          to the end.
        </caption>
        <thead>
          <tr>
            <th scope="col">Time</th>
            <th scope="col">Picture</th>
            <th scope="col">Sound</th>
          </tr>
        </thead>
        <tbody>
          {beats.map((beat, index) => (
            <tr key={index}>
              <th scope="row" className="num">
                {beat.from}
                <span className={styles.left}>−{beat.left}</span>
              </th>
              <td>
                <b>{beat.title}</b>
                <p>{beat.picture}</p>
                {beat.holdSeconds > 0 && <p className="quiet num">Hold {beat.holdSeconds} s</p>}
              </td>
              <td>
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
