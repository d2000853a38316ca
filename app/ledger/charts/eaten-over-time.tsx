import { axisY, dot, lineY, ruleY, text, windowY, type PlotOptions } from "@observablehq/plot";
import { groupBy } from "#lib/base/index.ts";
import type { Day } from "#lib/calendar/index.ts";
import type { LedgerView } from "#lib/use-cases/load-ledger.ts";
import { percent, periodName } from "../words.ts";
import { Chart } from "./chart.tsx";

const HEADS = { week: "Week of", month: "Month", quarter: "Quarter" } as const;

/** Periods that the line takes the mean of. */
const WINDOW = 5;

/** The share eaten by each child, week by week or month by month, one panel a child. */
export function EatenOverTime({ view }: { readonly view: LedgerView }) {
  const { bin, children } = view;
  const rows = children.flatMap(({ name, overTime }) =>
    overTime.map(({ on, share }) => ({ child: name, on, share })),
  );
  const title = `Eaten share, ${bin} by ${bin}`;
  const says = `The line is the mean of ${WINDOW} ${bin}s, a dot one ${bin}. ${children
    .map(({ name, overTime }) => `${name}: ${trend(overTime)}`)
    .join(" ")}`;
  return (
    <Chart
      shown={view}
      text={{ title, says }}
      place="full"
      draw={(width) =>
        draw(
          rows,
          children.map(({ name }) => name),
          width,
        )
      }
    >
      <table>
        <thead>
          <tr>
            <th>{HEADS[bin]}</th>
            {children.map(({ id, name }) => (
              <th className="n" key={id}>
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {[...groupBy(rows, ({ on }) => on)].toSorted(latestFirst).map(([on, own]) => (
            <tr key={on}>
              <td>{periodName(on, bin)}</td>
              {children.map(({ id, name }) => (
                <td className="n" key={id}>
                  {shareOf(own.find(({ child }) => child === name))}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Chart>
  );
}

function latestFirst([one]: readonly [Day, unknown], [other]: readonly [Day, unknown]): number {
  return one < other ? 1 : -1;
}

function shareOf(row: Row | undefined): string {
  return row ? percent(row.share) : "–";
}

type Row = { readonly child: string; readonly on: Day; readonly share: number };

function draw(rows: readonly Row[], names: readonly string[], width: number): PlotOptions {
  const points = rows.map(({ on, ...row }) => ({ ...row, at: new Date(`${on}T00:00:00Z`) }));
  const first = points[0]?.at ?? new Date(0);
  return {
    width,
    height: 60 + 118 * Math.max(1, names.length),
    marginLeft: 46,
    marginTop: 24,
    x: { type: "utc", label: null, ticks: width < 400 ? 4 : 10 },
    y: { domain: [0, 100], label: null },
    fy: { domain: names, axis: null, padding: 0.22 },
    marks: [
      axisY([0, 50, 100], { tickFormat: (value: number) => `${value} %`, tickSize: 0 }),
      ruleY([0, 50, 100], { stroke: "var(--line)" }),
      // On a phone the dots would lie on the line.
      width < 400
        ? null
        : dot(points, {
            ...{ x: "at", y: (row: Row) => row.share * 100, fy: "child" },
            ...{ r: 2.4, fill: "var(--line-strong)" },
          }),
      lineY(
        points,
        windowY(
          { k: WINDOW, anchor: "middle", strict: false },
          { x: "at", y: (row: Row) => row.share * 100, fy: "child", z: "child", strokeWidth: 2.2 },
        ),
      ),
      text(names, {
        ...{ fy: (name: string) => name, x: first, y: 100, text: (name: string) => name },
        ...{ textAnchor: "start", dy: -12, fontWeight: "bold" },
      }),
    ],
  };
}

function trend(points: readonly { readonly share: number }[]): string {
  const [first, last] = [points.slice(0, WINDOW), points.slice(-WINDOW)];
  if (points.length < 2 * WINDOW) return "too few to speak of a direction yet.";
  return `${percent(mean(first))} at first, ${percent(mean(last))} of late.`;
}

function mean(points: readonly { readonly share: number }[]): number {
  return points.reduce((sum, { share }) => sum + share, 0) / points.length;
}
