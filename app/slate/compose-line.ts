/** A food as the composer offers it. */
export type Choice = {
  readonly id: string;
  readonly name: string;
  readonly aliases: readonly string[];
  readonly part: string;
  readonly amount: number;
  readonly unit: string;
  readonly sliceable: boolean;
};

/** What stands beside the foods: the same for every day of the week. */
export type Household = {
  readonly parts: readonly string[];
  readonly shops: readonly { readonly id: string; readonly name: string }[];
  readonly people: readonly { readonly id: string; readonly name: string }[];
};

/** One item under the user's hands; amounts are text until they are saved. */
export type Line = {
  readonly key: string;
  /** Empty for an item that is not stored yet. */
  readonly id: string;
  readonly foodId: string;
  readonly name: string;
  readonly part: string;
  readonly amount: string;
  readonly unit: string;
  readonly shopId: string;
  readonly tricks: readonly { readonly id: string; readonly name: string }[];
  /** Amount by child, where it differs. */
  readonly shares: Readonly<Record<string, string>>;
};

/** A number as typed, with a decimal comma or point; NaN where it is none. */
export function numberTyped(text: string): number {
  return text.trim() === "" ? Number.NaN : Number(text.replace(",", "."));
}

/** The line a chosen food begins as. */
export function lineOf(food: Choice, key: string): Line {
  return {
    key,
    id: "",
    foodId: food.id,
    name: titled(food.name),
    part: food.part,
    amount: String(food.amount),
    unit: food.unit,
    shopId: "",
    tricks: [],
    shares: {},
  };
}

/** The list with one line moved by some places; unchanged where it would leave the list. */
export function moved(lines: readonly Line[], key: string, by: number): readonly Line[] {
  const from = lines.findIndex((line) => line.key === key);
  const to = from + by;
  const line = lines[from];
  if (!line || to < 0 || to >= lines.length) return lines;
  const rest = lines.filter((one) => one.key !== key);
  return [...rest.slice(0, to), line, ...rest.slice(to)];
}

/** A name as it begins a line: "Cucumber slices". */
export function titled(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}
