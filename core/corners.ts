/** Corners and axles by name: which is which, what stands at them, and what there is one of for each. */

/** Left front, right front, left rear, right rear. */
export const CORNERS = ['LF', 'RF', 'LR', 'RR'] as const;
/** One of them. */
export type Corner = (typeof CORNERS)[number];
/** The two axles. */
export type AxleName = 'front' | 'rear';

/** A position of an adjuster: mm, degrees or turns by its kind, or the label that is stamped on it. */
export type Position = number | string;
/** An adjuster of a car: the corner that it stands at, and its id. */
export interface AdjusterRef {
  readonly corner: Corner;
  readonly adjuster: string;
}

/** So many shims of a size, mm. */
export interface ShimCount {
  readonly size: number;
  readonly count: number;
}

/** The shims of packs, by corner and adjuster id: of those that are known. */
export type CarPacks = Readonly<Partial<Record<Corner, Readonly<Record<string, readonly ShimCount[]>>>>>;

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
