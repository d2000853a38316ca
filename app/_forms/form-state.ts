import type { z } from "zod";

/** What a server action answers: saved, refused for a reason, or invalid with errors by field. */
export type FormState =
  | { readonly kind: "saved"; readonly href?: string }
  | { readonly kind: "refused"; readonly message: string }
  | { readonly kind: "invalid"; readonly fields: Readonly<Record<string, string>> };

/** Everything was written. */
export const saved: FormState = { kind: "saved" };

/** Nothing was written, for a reason the user can act on. */
export function refused(message: string): Extract<FormState, { kind: "refused" }> {
  return { kind: "refused", message };
}

/** Nothing was written; the first error of each field, by its dotted path. */
export function invalid(error: z.ZodError): Extract<FormState, { kind: "invalid" }> {
  const fields: Record<string, string> = {};
  for (const { path, message } of error.issues) fields[path.join(".")] ??= message;
  return { kind: "invalid", fields };
}
