import { axisX, barX, ruleX, text, type PlotOptions } from "@observablehq/plot";
import { groupBy } from "#lib/base/index.ts";
import type { ShareEaten } from "#lib/reactions/index.ts";
import type { LedgerView } from "#lib/use-cases/load-ledger.ts";
import { percent } from "../words.ts";
import { Chart } from "./chart.tsx";

type Row = { readonly child: string; readonly part: string; readonly share: number };

/** The share eaten by the place an item has in the lunch, one panel a child. */
export function EatenByPart({ view }: { readonly view: LedgerView }) {
  const rows = view.children.flatMap(({ name, byPart }) =>
    byPart.map(({ part, share }) => ({ child: name, part, share })),
  );
  const says = view.children
    .map(({ name, byPart }) => {
      const sorted = byPart.toSorted((one, other) => other.share - one.share);
      const [best, least] = [sorted[0], sorted.at(-1)];
      return best && least && best !== least
        ? `${name} eats most of the ${best.part}, least of the ${least.part}.`
        : "";
    })
    .filter((sentence) => sentence !== "")
    .join(" ");
  return (
    <Chart
      shown={view}
      text={{ title: "Eaten share by part", says }}
      place="half"
      draw={(width) =>
        draw(
          rows,
          view.children.map(({ name }) => name),
          width,
        )
      }
    >
      <table>
        <thead>
          <tr>
            <th>Part</th>
            {view.children.map(({ id, name }) => (
              <th className="n" key={id}>
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {partsOf(rows).map((part) => (
            <tr key={part}>
              <td>{part}</td>
              {view.children.map(({ id, byPart }) => (
                <td className="n" key={id}>
                  {shareOf(byPart.find((one) => one.part === part))}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Chart>
  );
}

/** The parts, the one most is eaten of first. */
function partsOf(rows: readonly Row[]): string[] {
  return [...groupBy(rows, ({ part }) => part)]
    .map(([part, own]) => ({
      part,
      mean: own.reduce((sum, { share }) => sum + share, 0) / own.length,
    }))
    .sort((one, other) => other.mean - one.mean)
    .map(({ part }) => part);
}

function shareOf(one: ShareEaten | undefined): string {
  return one ? `${percent(one.share)} of ${one.verdicts}` : "–";
}

function draw(rows: readonly Row[], names: readonly string[], width: number): PlotOptions {
  const parts = partsOf(rows);
  return {
    width,
    height: 50 + names.length * (28 + parts.length * 21),
    marginLeft: 82,
    marginRight: 44,
    marginTop: 24,
    x: { domain: [0, 100], label: null },
    y: { domain: parts, label: null, padding: 0.28 },
    fy: { domain: names, axis: null, padding: 0.14 },
    marks: [
      axisX([0, 50, 100], { tickFormat: (value: number) => `${value} %`, tickSize: 0 }),
      ruleX([0, 50, 100], { stroke: "var(--line)" }),
      barX(rows, {
        ...{ x: (row: Row) => row.share * 100, y: "part", fy: "child" },
        fill: "var(--line-strong)",
      }),
      text(rows, {
        ...{ x: (row: Row) => row.share * 100, y: "part", fy: "child", dx: 5, textAnchor: "start" },
        text: (row: Row) => percent(row.share),
      }),
      text(names, {
        ...{ fy: (name: string) => name, frameAnchor: "top-left", dy: -16, dx: -78 },
        ...{ text: (name: string) => name, textAnchor: "start", fontWeight: "bold" },
      }),
    ],
  };
}
