import type { PlotOptions } from "@observablehq/plot";
import type { ReactNode } from "react";
import styles from "../ledger.module.css";
import { drawChart, drawnOnce, WIDTHS, type ChartText } from "./draw-chart.ts";

/** A chart with its heading, drawn for the desk and for the phone, and its figures as a table. */
export function Chart({
  shown,
  text,
  place,
  draw,
  note,
  children,
}: {
  /** What it is drawn from; the drawing is kept as long as this is. */
  readonly shown: object;
  readonly text: ChartText;
  readonly place: "half" | "full";
  readonly draw: (width: number) => PlotOptions;
  readonly note?: ReactNode;
  /** The table. */
  readonly children: ReactNode;
}) {
  const at = (width: number): { __html: string } => ({
    __html: drawnOnce(shown, `${text.title} ${width}`, () => drawChart(text, draw(width))),
  });
  return (
    <figure className={`sheet ${styles.chart}`}>
      <figcaption>
        <h2>{text.title}</h2>
        <p className="small quiet">{text.says}</p>
      </figcaption>
      <div className={styles.desk} dangerouslySetInnerHTML={at(WIDTHS[place])} />
      <div className={styles.phone} dangerouslySetInnerHTML={at(WIDTHS.phone)} />
      {note}
      <details className={styles.figures}>
        <summary>The figures as a table</summary>
        <div
          className={styles.scroll}
          role="region"
          aria-label={`${text.title}: figures`}
          tabIndex={0}
        >
          {children}
        </div>
      </details>
    </figure>
  );
}
