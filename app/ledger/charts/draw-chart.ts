import { plot, type PlotOptions } from "@observablehq/plot";
import { parseHTML } from "linkedom";

/** Width of the page a chart is drawn for: beside another, alone, or on a phone. */
export const WIDTHS = { half: 540, full: 1120, phone: 330 } as const;

/** What a chart is and says, for those who do not see it. */
export type ChartText = { readonly title: string; readonly says: string };

/**
 * A chart as SVG text, drawn without a browser. Its ink is the page's own (currentColor and tokens),
 * so light and dark need one drawing.
 */
export function drawChart({ title, says }: ChartText, options: PlotOptions): string {
  // The drawing library asks for a browser's document and uses only what linkedom has of one.
  const document = parseHTML("<!doctype html><html><body></body></html>").document;
  const svg = plot({ ...options, document });
  svg.querySelector("style")?.remove();
  svg.setAttribute("class", "plot");
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", `${title}. ${says}`);
  svg.setAttribute("font-size", "13");
  svg.removeAttribute("font-family");
  for (const part of svg.querySelectorAll("[aria-label]")) part.removeAttribute("aria-label");
  for (const [name, text] of [
    ["desc", says],
    ["title", title],
  ] as const) {
    const note = document.createElementNS("http://www.w3.org/2000/svg", name);
    note.textContent = text;
    svg.prepend(note);
  }
  return compact(svg.outerHTML);
}

/**
 * Tenths of a pixel, and quotes that need no escaping where the page repeats it for the browser. Words
 * keep their numbers: a tick of €0.05 is not one of €0.1.
 */
function compact(svg: string): string {
  return svg.replace(/ ([\w:-]+)="([^"'<>]*)"/g, (_, name: string, value: string) => {
    const short = name === "aria-label" ? value : value.replace(/-?\d+\.\d{2,}/g, tenths);
    return ` ${name}='${short}'`;
  });
}

function tenths(number: string): string {
  return String(Math.round(+number * 10) / 10);
}

const drawings = new WeakMap<object, Map<string, string>>();

/** A drawing made once for what it shows: views are shared until something is written. */
export function drawnOnce(shown: object, key: string, draw: () => string): string {
  const own = drawings.get(shown) ?? new Map<string, string>();
  drawings.set(shown, own);
  const known = own.get(key) ?? draw();
  own.set(key, known);
  return known;
}
