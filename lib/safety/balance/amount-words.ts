const EIGHTHS = ["", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"] as const;

/** An amount in eighths as a cook writes it: 0, ½, 1¼; what lies between is rounded down. */
export function amountWord(amount: number): string {
  const eighths = Math.floor(amount * 8 + 1e-9);
  const [whole, rest] = [Math.floor(eighths / 8), EIGHTHS[eighths % 8] ?? ""];
  return whole === 0 && rest !== "" ? rest : `${whole}${rest}`;
}
