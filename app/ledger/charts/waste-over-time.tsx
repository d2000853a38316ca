import { axisX, axisY, rectY, ruleY, type PlotOptions } from "@observablehq/plot";
import { partsOf, type Day } from "#lib/calendar/index.ts";
import type { LedgerView } from "#lib/use-cases/load-ledger.ts";
import { count, money, percent, periodName } from "../words.ts";
import { Chart } from "./chart.tsx";
import { moneyAxis } from "./money-axis.ts";

type Period = LedgerView["wasteOverTime"][number];

/** What came back, in money, period by period. */
export function WasteOverTime({ view }: { readonly view: LedgerView }) {
  const { currency, waste, wasteOverTime: periods } = view;
  const bin = view.bin === "quarter" ? view.bin : ("month" as const);
  const share = waste.packedCents > 0 ? waste.wastedCents / waste.packedCents : 0;
  const says =
    `${money(waste.wastedCents, currency)} of ${money(waste.packedCents, currency)} packed came back, ` +
    `${percent(share)}.${waste.unpriced > 0 ? ` ${count(waste.unpriced, "verdict")} without a price or an amount left out.` : ""}`;
  return (
    <Chart
      shown={view}
      text={{ title: "What came back, in money", says }}
      place="half"
      draw={(width) => draw(periods, { bin, currency, width })}
    >
      <table>
        <thead>
          <tr>
            <th>{bin === "quarter" ? "Quarter" : "Month"}</th>
            <th className="n">Packed</th>
            <th className="n">Came back</th>
          </tr>
        </thead>
        <tbody>
          {periods.toReversed().map(({ on, packedCents, wastedCents }) => (
            <tr key={on}>
              <td>{periodName(on, bin)}</td>
              <td className="n">{money(packedCents, currency)}</td>
              <td className="n">{money(wastedCents, currency)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Chart>
  );
}

function draw(
  periods: readonly Period[],
  { bin, currency, width }: { bin: "month" | "quarter"; currency: string; width: number },
): PlotOptions {
  const most = Math.max(...periods.map(({ wastedCents }) => wastedCents));
  return {
    width,
    height: 230,
    marginLeft: 52,
    marginTop: 10,
    x: { type: "utc", label: null },
    y: { label: null, nice: true },
    marks: [
      axisX({ ticks: width < 400 ? 4 : 6, tickSize: 0 }),
      axisY({ ...moneyAxis(most, currency), tickSize: 0 }),
      ruleY([0], { stroke: "var(--line-strong)" }),
      rectY(periods, {
        ...{
          x1: ({ on }: Period) => at(on, 0),
          x2: ({ on }: Period) => at(on, bin === "quarter" ? 3 : 1),
        },
        ...{ y: ({ wastedCents }: Period) => wastedCents / 100, fill: "var(--line-strong)" },
        ...{ insetLeft: 1, insetRight: 1 },
      }),
    ],
  };
}

/** The first instant of a month, so many later. */
function at(on: Day, months: number): Date {
  const [year, month] = partsOf(on);
  return new Date(Date.UTC(year, month - 1 + months, 1));
}
