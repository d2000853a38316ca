/** Sets a value as the one asked for last; of more than `most`, those not asked for longest go. */
export function keepRecent<Key, Value>(
  kept: Map<Key, Value>,
  key: Key,
  value: Value,
  most: number,
): Value {
  // A map keeps the order in which its keys were set.
  kept.delete(key);
  kept.set(key, value);
  for (const oldest of kept.keys()) {
    if (kept.size <= most) break;
    kept.delete(oldest);
  }
  return value;
}
