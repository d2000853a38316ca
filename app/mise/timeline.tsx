import { clockTime, type Day } from "#lib/calendar/index.ts";
import type { MiseStep } from "#lib/use-cases/load-mise.ts";
import { TINTS } from "#app/_ui/food-tint.ts";
import { NowLine } from "./now-line.client.tsx";
import { timelineRows, timelineScale } from "./timeline-rows.ts";
import styles from "./mise.module.css";

/**
 * The steps drawn by cook and appliance against the clock. It is a picture: the list beside it says the
 * same in words, under the same numbers.
 */
export function Timeline({
  label,
  steps,
  firstNumber,
  until,
  date,
  zone,
}: {
  readonly label: string;
  readonly steps: readonly MiseStep[];
  readonly firstNumber: number;
  /** Shown up to here at least. */
  readonly until?: number;
  readonly date: Day;
  readonly zone: string;
}) {
  const scale = timelineScale(steps, until);
  const { from, to, marks } = scale;
  const percent = (minute: number): number => (100 * (minute - from)) / (to - from);
  return (
    <figure className={styles.timeline} role="img" aria-label={label}>
      <div className={styles.clock} aria-hidden="true">
        {marks.map((minute) => (
          <span key={minute} style={{ left: `${percent(minute)}%` }}>
            {clockTime(minute)}
          </span>
        ))}
      </div>
      {timelineRows(steps, firstNumber).map(({ name, bars }, row) => (
        <div className={styles.lane} key={`${row} ${name}`} aria-hidden="true">
          <span className={styles.laneName}>{name}</span>
          <div className={styles.track}>
            {marks.map((minute) => (
              <i key={minute} style={{ left: `${percent(minute)}%` }} />
            ))}
            {bars.map(({ step, number }) => (
              <Bar
                key={step.id}
                step={step}
                number={number}
                left={percent(step.from)}
                right={percent(Math.min(step.to, to))}
              />
            ))}
          </div>
        </div>
      ))}
      <NowLine date={date} zone={zone} from={from} to={to} />
    </figure>
  );
}

function Bar({
  step,
  number,
  left,
  right,
}: {
  readonly step: MiseStep;
  readonly number: number;
  readonly left: number;
  readonly right: number;
}) {
  const tint = step.colour === null ? undefined : TINTS[step.colour];
  const looks = [
    styles.bar,
    step.handsOn ? "" : styles.alone,
    step.isCritical ? styles.critical : "",
    step.tick ? styles.ticked : "",
    tint ? "" : styles.inked,
  ];
  return (
    <span
      className={looks.filter(Boolean).join(" ")}
      title={`${step.starts}–${step.ends} ${step.line}`}
      style={{
        left: `${left}%`,
        width: `${Math.max(0.5, right - left)}%`,
        ...(tint && { backgroundColor: tint.fill, borderColor: tint.line }),
      }}
    >
      <b>{number}</b>
      <span className={styles.barName}>{step.colour === null ? step.line : step.about}</span>
    </span>
  );
}
