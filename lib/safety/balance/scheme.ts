/**
 * By whose scheme amounts are counted: none, the US school meal pattern of a grade, the consumer's plate,
 * or portions of 80 g. A number always belongs to one scheme: an egg is two ounce equivalents at school
 * and one on the consumer's plate.
 */
export const BALANCE_SCHEMES = [
  "off",
  "school-k5",
  "school-6-8",
  "school-9-12",
  "plate",
  "portions",
] as const;
export type BalanceScheme = (typeof BALANCE_SCHEMES)[number];

/** A scheme in words, as a choice shows it. */
export function schemeWord(scheme: BalanceScheme): string {
  switch (scheme) {
    case "off":
      return "none";
    case "school-k5":
      return "US school meal pattern, grades K–5";
    case "school-6-8":
      return "US school meal pattern, grades 6–8";
    case "school-9-12":
      return "US school meal pattern, grades 9–12";
    case "plate":
      return "consumer plate, five groups";
    case "portions":
      return "portions of 80 g of fruit and vegetables";
  }
}
