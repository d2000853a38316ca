/** A reproducible source of randomness: the same seed gives the same sequence on every machine. */
export type Random = {
  /** Uniform in [0, 1). */
  readonly next: () => number;
  /** Uniform whole number in [0, below). */
  readonly below: (below: number) => number;
  /** One element, uniformly; throws on an empty list. */
  readonly pick: <Item>(items: readonly Item[]) => Item;
  /** A shuffled copy. */
  readonly shuffle: <Item>(items: readonly Item[]) => Item[];
};

/**
 * Seeded generator: mulberry32, state seeded by an FNV-1a hash of the text.
 * Sources: T. Ettinger, "mulberry32" (public domain, 2017); Fowler–Noll–Vo hash, 32 bit. Not for secrets.
 */
export function randomFrom(seed: string | number): Random {
  let state = hash32(String(seed));
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const below = (limit: number): number => Math.floor(next() * limit);
  return {
    next,
    below,
    pick: (items) => {
      const item = items[below(items.length)];
      if (item === undefined) throw new Error("pick() was handed an empty list");
      return item;
    },
    shuffle: (items) => {
      const copy = [...items];
      for (let last = copy.length - 1; last > 0; last -= 1) {
        const other = below(last + 1);
        const held = copy[last] as (typeof copy)[number];
        copy[last] = copy[other] as (typeof copy)[number];
        copy[other] = held;
      }
      return copy;
    },
  };
}

/** 32-bit FNV-1a hash of a text, unsigned. */
export function hash32(text: string): number {
  let hash = 0x811c9dc5;
  for (let index = 0; index < text.length; index += 1) {
    hash ^= text.charCodeAt(index);
    hash = Math.imul(hash, 0x01000193);
  }
  return hash >>> 0;
}
