import { axisX, axisY, dot, ruleX, ruleY, type PlotOptions } from "@observablehq/plot";
import type { LedgerView } from "#lib/use-cases/load-ledger.ts";
import { points } from "../words.ts";
import { Chart } from "./chart.tsx";

type Effect = LedgerView["tricks"][number];

/** No more tricks than this are drawn; the table has them all. */
const DRAWN = 12;

/** How much more was eaten with a trick than without, for the same child and food. */
export function TrickEffects({ view }: { readonly view: LedgerView }) {
  const clear = view.tricks.filter(({ low }) => low > 0);
  const others = view.tricks.filter(({ low }) => low <= 0);
  // What the sentence names is drawn in any case.
  const drawn = [...clear, ...others].slice(0, DRAWN);
  const says =
    clear.length === 0
      ? "No trick stands clear of chance: every interval reaches zero."
      : `Clear of zero: ${clear.map(({ name }) => name).join(", ")}.`;
  return (
    <Chart
      shown={view}
      text={{ title: "Which tricks help", says }}
      place="half"
      draw={(width) => draw(drawn, width)}
      note={
        <p className="small quiet">
          Points of eaten share more (right) or less (left) than the same child ate of the same food
          without it; the bar holds 95 % of what chance would allow. This is an association only:
          nobody drew lots for the tricks, and of {view.tricks.length} the best will look better
          than it is.
        </p>
      }
    >
      <table>
        <thead>
          <tr>
            <th>Trick</th>
            <th className="n">Difference, points</th>
            <th className="n">95 % interval</th>
            <th className="n">Held to the mean</th>
            <th className="n">With</th>
            <th className="n">Without</th>
          </tr>
        </thead>
        <tbody>
          {view.tricks.map((effect) => (
            <tr key={effect.trickId}>
              <td>{effect.name}</td>
              <td className="n">{points(effect.difference)}</td>
              <td className="n">
                {points(effect.low)} to {points(effect.high)}
              </td>
              <td className="n">{points(effect.held)}</td>
              <td className="n">{effect.withTrick}</td>
              <td className="n">{effect.without}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Chart>
  );
}

function draw(effects: readonly Effect[], width: number): PlotOptions {
  const most = Math.max(20, ...effects.flatMap(({ low, high }) => [-low * 100, high * 100]));
  const reach = Math.min(100, Math.ceil(most / 10) * 10);
  return {
    width,
    height: 46 + effects.length * 27,
    marginLeft: 146,
    marginRight: 16,
    marginTop: 6,
    x: { domain: [-reach, reach], label: null },
    y: { domain: effects.map(({ name }) => name), label: null, padding: 0.4, type: "band" },
    marks: [
      axisX({ ticks: 5, tickSize: 0, tickFormat: (value: number) => points(value / 100) }),
      axisY({ tickSize: 0 }),
      ruleX([0], { stroke: "var(--line-strong)", strokeDasharray: "3 3" }),
      ruleY(effects, {
        ...{ y: "name", x1: (one: Effect) => one.low * 100, x2: (one: Effect) => one.high * 100 },
        ...{ strokeWidth: 4, strokeLinecap: "round", stroke: "var(--line-strong)" },
      }),
      dot(effects, {
        ...{ y: "name", x: (one: Effect) => one.difference * 100, r: 5, fill: "currentColor" },
      }),
    ],
  };
}
