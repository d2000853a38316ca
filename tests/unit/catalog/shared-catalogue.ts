import { existsSync, readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { z } from "zod";

/** Where the shared reference files lie beside the project; absent on a plain clone. */
const SHARED = new URL("../../../../shared/", import.meta.url);

export const hasSharedFiles = existsSync(new URL("catalogue/catalogue.csv", SHARED));

/** Rows of a shared CSV file by column name; none when the folder is not there. */
export function sharedRows(path: string): Record<string, string>[] {
  const file = new URL(path, SHARED);
  if (!existsSync(file)) return [];
  const rows: unknown = parse(readFileSync(file), { columns: true, bom: true });
  return z.array(z.record(z.string(), z.string())).parse(rows);
}

export type ListedFood = {
  readonly id: string;
  readonly name: string;
  readonly aliases: readonly string[];
  readonly group: string;
  readonly servingGrams: number;
  readonly gramsPerCup: number | null;
  readonly unitWeights: Record<string, number>;
};

/** The 404 foods of the shared catalogue draft, as little of them as matching and weighing need. */
export function listedFoods(): ListedFood[] {
  return sharedRows("catalogue/catalogue.csv").map((row) => {
    const unitWeights = weightsOf(row["unit_weights"] ?? "");
    return {
      id: (row["name"] ?? "").toLowerCase().replaceAll(/[^a-z0-9]+/g, "-"),
      name: row["name"] ?? "",
      aliases: (row["aliases"] ?? "").split("|").filter((alias) => alias !== ""),
      group: row["family"] ?? "",
      servingGrams: Number(row["grams_per_serving"]),
      gramsPerCup: unitWeights["cup"] ?? null,
      unitWeights,
    };
  });
}

function weightsOf(text: string): Record<string, number> {
  const pairs = text.split(/;\s*/).map((entry) => {
    const at = entry.lastIndexOf("=");
    return [entry.slice(0, at), Number(entry.slice(at + 1))] as const;
  });
  return Object.fromEntries(pairs.filter(([unit, grams]) => unit !== "" && grams > 0));
}
