import type { z } from "zod";

/** Reads a JSON column through its schema; throws with the column's name when the row is not as promised. */
export function parseColumn<Schema extends z.ZodType>(
  schema: Schema,
  text: string,
  column: string,
): z.infer<Schema> {
  const parsed = schema.safeParse(JSON.parse(text) as unknown);
  if (!parsed.success) {
    throw new Error(`The column ${column} holds something unexpected: ${parsed.error.message}`);
  }
  return parsed.data;
}
