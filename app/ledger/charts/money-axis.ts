/**
 * The ticks of an axis in units of money up to so many cents: cents are written only where the steps
 * need them, and there are no more steps than cents, so that no two ticks read the same.
 */
export function moneyAxis(
  mostCents: number,
  currency: string,
): { readonly ticks: number; readonly tickFormat: (value: number) => string } {
  const ticks = 4;
  const decimals = mostCents < ticks * 100 ? 2 : 0;
  return {
    ticks: Math.max(1, Math.min(ticks, Math.floor(mostCents))),
    tickFormat: (value) => `${currency}${value.toFixed(decimals)}`,
  };
}
