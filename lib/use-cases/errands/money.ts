import type { Money } from "#lib/shopping/index.ts";

/** Writes cents with the user's sign before them: "€3.40", "kr 12.00". */
export function moneyIn(currency: string): Money {
  const gap = /[a-z]$/i.test(currency) ? " " : "";
  return (cents) => `${currency}${gap}${(cents / 100).toFixed(2)}`;
}
