import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { parse } from "csv-parse/sync";

export type SharedRow = Readonly<Record<string, string>>;

/**
 * Rows of a file beside the project (`../shared`), or undefined where the folder is not there.
 * Nothing of it is part of the project; the tests that need it say how much they left out.
 */
export function readShared(path: string): readonly SharedRow[] | undefined {
  const file = fileURLToPath(new URL(`../../../../shared/${path}`, import.meta.url));
  if (!existsSync(file)) return undefined;
  return parse(readFileSync(file), { columns: true, bom: true });
}
