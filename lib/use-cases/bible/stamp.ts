import { hash32 } from "#lib/base/index.ts";

/**
 * A short mark of how something stands. A form keeps the mark it was opened with: when the mark differs
 * at saving, another tab saved first.
 */
export function stampOf(standing: unknown): string {
  const text = JSON.stringify(standing);
  return `${hash32(text).toString(36)}-${hash32(`again ${text}`).toString(36)}`;
}
