import { InputError } from '../input-error.ts';

/**
 * A figure that was typed, if it is one that can be.
 * @throws InputError naming the field
 */
export function within(field: string, value: number, low: number, high: number, on: 'mm' | 'degrees'): number {
  if (typeof value === 'number' && value >= low && value <= high) return value;
  throw new InputError(field, value, { is: 'place', on, low, high });
}

/**
 * Readings of one thing, if they are a list of any.
 * @throws InputError naming the list
 */
export function listed<T>(field: string, all: readonly T[]): readonly T[] {
  if (Array.isArray(all) && all.length > 0) return all;
  throw new InputError(field, all, { is: 'at-least-one' });
}

/**
 * What holds the figures of a measurement, if it is there at all.
 * @throws InputError naming the argument
 */
export function given<T extends object>(argument: string, value: T): T {
  if (typeof value === 'object' && value !== null) return value;
  throw new InputError(argument, value, { is: 'given' });
}
