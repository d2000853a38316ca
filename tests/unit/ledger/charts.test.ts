import { axisY, ruleY } from "@observablehq/plot";
import { parseHTML } from "linkedom";
import { expect, test } from "vitest";
import { drawChart } from "#app/ledger/charts/draw-chart.ts";
import { moneyAxis } from "#app/ledger/charts/money-axis.ts";

const TEXT = { title: "Money", says: "€0.05 of €12.40 packed came back, 0 %." };

function drawn(mostCents: number): ReturnType<typeof parseHTML>["document"] {
  const svg = drawChart(TEXT, {
    ...{ width: 540, height: 230, marginLeft: 52 },
    y: { domain: [0, mostCents / 100], nice: true, label: null },
    marks: [axisY({ ...moneyAxis(mostCents, "€"), tickSize: 0 }), ruleY([0])],
  });
  return parseHTML(`<!doctype html><html><body>${svg}</body></html>`).document;
}

test.each([1, 2, 3, 5, 10, 15, 37, 99, 130, 250, 399, 400, 750, 1234, 12_000, 99_999])(
  "the axis of %i cents has ticks that differ, stand for their places, and rise evenly",
  (mostCents) => {
    const labels = [...drawn(mostCents).querySelectorAll("text")].map((one) => one.textContent);
    expect(labels.length).toBeGreaterThan(1);
    expect(new Set(labels).size).toBe(labels.length);
    const values = labels.map((label) => Number(label.replace("€", "")));
    const steps = values.slice(1).map((value, index) => value - (values[index] ?? 0));
    for (const step of steps) expect(step).toBeCloseTo(steps[0] ?? 0, 6);
  },
);

test("what a chart says keeps its cents; only the drawing is rounded", () => {
  const document = drawn(1234);
  const svg = document.querySelector("svg");
  expect(svg?.getAttribute("aria-label")).toBe(`Money. ${TEXT.says}`);
  expect(document.querySelector("desc")?.textContent).toBe(TEXT.says);
  const moves = [...document.querySelectorAll("[transform]")].map((one) =>
    one.getAttribute("transform"),
  );
  expect(moves.length).toBeGreaterThan(0);
  for (const move of moves) expect(move).not.toMatch(/\d\.\d\d/u);
});
