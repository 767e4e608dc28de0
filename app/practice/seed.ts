/** Numbers that look random and are not: the same text always gives the same ones. */

/** A generator of numbers in [0, 1) from a text (FNV-1a hash into the mulberry32 generator, both public domain). */
export function seeded(text: string): () => number {
  let state = 0x811c9dc5;
  for (const character of text) state = Math.imul(state ^ (character.codePointAt(0) ?? 0), 0x01000193);
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let x = Math.imul(state ^ (state >>> 15), 1 | state);
    x = (x + Math.imul(x ^ (x >>> 7), 61 | x)) ^ x;
    return ((x ^ (x >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Uniform in ±size. */
export const within = (next: () => number, size: number): number => (2 * next() - 1) * size;

/** Normal with one standard deviation `size` (Box and Muller). */
export function normal(next: () => number, size: number): number {
  return size * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}
