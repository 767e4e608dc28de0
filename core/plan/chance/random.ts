/** A seeded stream of normal deviates: the same plan gives the same chance every time, on every phone. */

/** 32-bit generator by T. Ettinger's "mulberry32" recipe (public domain; constants from memory). */
function uniform(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Standard normal deviates (Box–Muller). */
export function normals(seed: number): () => number {
  const next = uniform(seed);
  let spare: number | undefined;
  return () => {
    if (spare !== undefined) {
      const value = spare;
      spare = undefined;
      return value;
    }
    const radius = Math.sqrt(-2 * Math.log(1 - next()));
    const turn = 2 * Math.PI * next();
    spare = radius * Math.sin(turn);
    return radius * Math.cos(turn);
  };
}
