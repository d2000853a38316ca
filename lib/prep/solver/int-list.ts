/** The number at an index that is known to be inside; the one place where that knowledge is stated. */
export function numberAt(list: Int32Array, index: number): number {
  return list[index] as number;
}

/** A growing list of 32-bit numbers: a stack that the search can cut back. */
export class IntList {
  items: Int32Array;
  size = 0;

  constructor(room = 16) {
    this.items = new Int32Array(room);
  }

  push(value: number): void {
    if (this.size === this.items.length) {
      const wider = new Int32Array(this.size * 2);
      wider.set(this.items);
      this.items = wider;
    }
    this.items[this.size++] = value;
  }

  get(index: number): number {
    return this.items[index] as number;
  }
}
