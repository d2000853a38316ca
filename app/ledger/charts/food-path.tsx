import { axisX, axisY, dot, line, ruleY, type PlotOptions } from "@observablehq/plot";
import { mediumDay, partsOf } from "#lib/calendar/index.ts";
import { TASTINGS_GUIDE, type PathPoint } from "#lib/reactions/index.ts";
import type { ChildPath } from "#lib/use-cases/load-food-ledger.ts";
import { count, percent } from "../words.ts";
import { Chart } from "./chart.tsx";

/** A food offered more often than this is shown from its latest offers. */
const SHOWN = 60;

/** How one food went with one child, offer by offer, and what was expected before each. */
export function FoodPath({ path, food }: { readonly path: ChildPath; readonly food: string }) {
  const { child, points } = path;
  const latest = points.slice(-SHOWN);
  const tastings = points.at(-1)?.tasting ?? 0;
  const says = `${count(points.length, "offer")}, ${count(tastings, "tasting")}; studies gave a new food ${TASTINGS_GUIDE.from} to ${TASTINGS_GUIDE.to}. ${latest.length < points.length ? `The latest ${SHOWN} offers` : "Offer by offer"}, dots: what was eaten; line: what was expected before.`;
  return (
    <Chart
      shown={points}
      text={{ title: `${child} and ${food}`, says }}
      place="half"
      draw={(width) => draw(latest, points.length - latest.length, width)}
      note={<p>{path.why}</p>}
    >
      <table>
        <thead>
          <tr>
            <th>Day</th>
            <th className="n">Tasting</th>
            <th className="n">Eaten</th>
            <th className="n">Face, 0–100</th>
            <th className="n">Expected</th>
          </tr>
        </thead>
        <tbody>
          {latest.toReversed().map(({ day, tasting, eaten, face, expected }, index) => (
            <tr key={`${day} ${index}`}>
              <td>
                {mediumDay(day)} {partsOf(day)[0]}
              </td>
              <td className="n">{tasting}</td>
              <td className="n">{eaten === null ? "not seen" : percent(eaten / 4)}</td>
              <td className="n">{face === null ? "–" : Math.round(face)}</td>
              <td className="n">{percent(expected)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Chart>
  );
}

function draw(points: readonly PathPoint[], before: number, width: number): PlotOptions {
  const offers = points.map((point, index) => ({ ...point, offer: before + index + 1 }));
  type Offer = (typeof offers)[number];
  return {
    width,
    height: 220,
    marginLeft: 50,
    marginTop: 12,
    x: { label: null, domain: [before + 0.5, before + Math.max(offers.length, 4) + 0.5] },
    y: { domain: [0, 100], label: null },
    marks: [
      axisX({ ticks: Math.min(offers.length, 8), tickSize: 0, tickFormat: "d" }),
      axisY([0, 25, 50, 75, 100], { tickFormat: (value: number) => `${value} %`, tickSize: 0 }),
      ruleY([0, 25, 50, 75, 100], { stroke: "var(--line)" }),
      line(offers, {
        ...{ x: "offer", y: ({ expected }: Offer) => expected * 100 },
        ...{ stroke: "var(--line-strong)", strokeWidth: 2 },
      }),
      dot(
        offers.filter(({ eaten }) => eaten !== null),
        {
          ...{ x: "offer", y: ({ eaten }: Offer) => (eaten ?? 0) * 25 },
          ...{ r: offers.length > 40 ? 3 : 5, fill: "currentColor" },
        },
      ),
    ],
  };
}
