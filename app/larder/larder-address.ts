import type { FindLarderInput } from "#lib/use-cases/larder/find-larder.input.ts";

/** The address of the table with some of the asked filters changed; what is empty is left out. */
export function larderAddress(
  asked: FindLarderInput,
  changes: Partial<Record<keyof FindLarderInput, string | number | undefined>>,
): string {
  const query = new URLSearchParams();
  for (const [key, value] of Object.entries({ ...asked, page: undefined, ...changes })) {
    if (value !== undefined && value !== "") query.set(key, String(value));
  }
  const text = query.toString();
  return text === "" ? "/larder" : `/larder?${text}`;
}
