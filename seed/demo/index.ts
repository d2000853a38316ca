/** Demo: the invented series "Tin Harbour" and a long one for the bench, with the tastes behind them. */
export { tinHarbour } from "./tin-harbour.ts";
export { tenYears, type LongSeries } from "./ten-years.ts";
export type { DemoSources, DemoTheme } from "./sources.ts";
export type * from "./records.ts";
export { QUOTES } from "./quotes.ts";
