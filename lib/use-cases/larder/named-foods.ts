import type { Food } from "#lib/catalog/index.ts";
import { keepUntilWritten, readFoods, type Db } from "#lib/db/index.ts";

/**
 * The foods in use as one and the same array until something is written: matching keeps its index by
 * the array, so a name is found without building it anew.
 */
export function readNamedFoods(db: Db): Promise<readonly Food[]> {
  return keepUntilWritten(db, "named foods", () => readFoods(db));
}
