/** Binary heap, least first: the search's open list. */
export class Heap<T> {
  readonly #items: T[] = [];
  constructor(private readonly before: (a: T, b: T) => boolean) {}

  push(item: T): void {
    const items = this.#items;
    let i = items.length;
    items.push(item);
    while (i > 0) {
      const up = (i - 1) >> 1;
      if (!this.before(item, items[up] as T)) break;
      items[i] = items[up] as T;
      i = up;
    }
    items[i] = item;
  }

  /** The first so many, or as many as there are. */
  take(most: number): T[] {
    return Array.from({ length: Math.min(most, this.#items.length) }, () => this.pop() as T);
  }

  pop(): T | undefined {
    const items = this.#items;
    const first = items[0];
    const last = items.pop();
    if (items.length === 0 || last === undefined) return first;
    let i = 0;
    for (;;) {
      let down = 2 * i + 1;
      if (down >= items.length) break;
      if (down + 1 < items.length && this.before(items[down + 1] as T, items[down] as T)) down++;
      if (!this.before(items[down] as T, last)) break;
      items[i] = items[down] as T;
      i = down;
    }
    items[i] = last;
    return first;
  }
}
