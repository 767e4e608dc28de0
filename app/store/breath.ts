/** Long work in the page that lets it answer fingers in between. */

/** At each step of the work: returns at once, or nothing has been answered for a while. */
export type Breath = () => Promise<void> | undefined;

/** ms of work before the page comes to its turn. */
const LONGEST = 10;

export function breather(): Breath {
  let began = performance.now();
  return () => {
    if (performance.now() - began < LONGEST) return undefined;
    return new Promise((resolve) => {
      setTimeout(() => {
        began = performance.now();
        resolve();
      });
    });
  };
}
