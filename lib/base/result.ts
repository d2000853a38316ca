/** A value, or a foreseeable refusal that says which. */
export type Result<Value, Problem> =
  { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly problem: Problem };

/** Wraps a value. */
export function ok<Value>(value: Value): { readonly ok: true; readonly value: Value } {
  return { ok: true, value };
}

/** Wraps a refusal. */
export function refuse<Problem>(problem: Problem): {
  readonly ok: false;
  readonly problem: Problem;
} {
  return { ok: false, problem };
}
