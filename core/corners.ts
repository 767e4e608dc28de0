/** Corners and axles by name: which is which, and what there is one of for each. */
import { type AxleName, CORNERS, type Corner } from './contract.ts';

/** Left and right corner of each axle. */
export const AXLES: Readonly<Record<AxleName, readonly [Corner, Corner]>> = { front: ['LF', 'RF'], rear: ['LR', 'RR'] };

export const axleOf = (corner: Corner): AxleName => (corner.endsWith('F') ? 'front' : 'rear');
export const isLeft = (corner: Corner): boolean => corner.startsWith('L');
export const isAxle = (where: Corner | AxleName): where is AxleName => where === 'front' || where === 'rear';

/** The corners that a place is about: itself, or both of an axle. */
export const cornersOf = (where: Corner | AxleName): readonly Corner[] => (isAxle(where) ? AXLES[where] : [where]);

/** One for each corner. */
export const byCorner = <T>(make: (corner: Corner) => T): Record<Corner, T> =>
  Object.fromEntries(CORNERS.map((corner) => [corner, make(corner)])) as Record<Corner, T>;
