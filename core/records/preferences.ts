/** What the known preferences may be, as data: pages read them by it, and a backup is checked by it. */

/** What is chosen of each of the units. */
export const UNIT_CHOICES = {
  angle: ['degrees', 'degrees-minutes'],
  toe: ['angle', 'mm', 'inch'],
  /** Toe in inches: decimals, or parts of an inch as a tape has them. */
  toeParts: ['decimal', '16', '32'],
  length: ['mm', 'inch'],
  thrust: ['right-plus', 'right-minus'],
  decimal: ['.', ','],
  /** What an odometer counts. */
  distance: ['km', 'mi'],
} as const;
/** How a rack goes through its figures: left and right of each angle, or all of a wheel before the next. */
export const RACK_ORDERS = ['across', 'wheel'] as const;
/** How many decimals it shows, of what: angles, toe as an angle, toe as a length. */
export const DECIMALS_OF = ['angle', 'toe', 'mm', 'inch'] as const;
export const DECIMALS = [1, 2, 3] as const;
export const THEMES = ['system', 'light', 'dark', 'high-contrast'] as const;
export const TOE_REFERENCES = ['thrust-line', 'centreline'] as const;

/** What the bench measures with: the unit of its scatter, and the most that is no slip. */
export const BENCH = {
  tape: { most: 20, unit: 'mm' },
  rule: { most: 20, unit: 'mm' },
  level: { most: 5, unit: 'degrees' },
  plate: { most: 5, unit: 'degrees' },
  slip: { most: 5, unit: 'm/km' },
} as const;

/** Whether a value is one of a list. */
export const isOneOf = <T>(all: readonly T[], value: unknown): value is T => all.some((one) => one === value);
