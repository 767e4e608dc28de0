/** What the known preferences may be, as data: pages read them by it, and a backup is checked by it. */

/** What is chosen of each of the units. */
export const UNIT_CHOICES = {
  angle: ['degrees', 'degrees-minutes'],
  toe: ['angle', 'mm', 'inch'],
  length: ['mm', 'inch'],
  thrust: ['right-plus', 'right-minus'],
  decimal: ['.', ','],
} as const;
export const THEMES = ['system', 'light', 'dark', 'high-contrast'] as const;
export const TOE_REFERENCES = ['thrust-line', 'centreline'] as const;

/** Whether a value is one of a list. */
export const isOneOf = <T>(all: readonly T[], value: unknown): value is T => all.some((one) => one === value);
