/** True when a value is neither null nor undefined; narrows in `filter`. */
export function isPresent<Value>(value: Value | null | undefined): value is Value {
  return value !== null && value !== undefined;
}
