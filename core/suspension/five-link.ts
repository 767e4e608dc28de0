import type { SuspensionKind } from './kind.ts';

const NUMBERS = [1, 2, 3, 4, 5] as const;

/** Five separate links. The wheel turns about no fixed axis, so that caster and SAI are not defined. */
export const fiveLink: SuspensionKind = {
  kind: 'five-link',
  name: 'Five links',
  points: [...NUMBERS.flatMap((n) => [`inner${n}`, `outer${n}`]), 'wheelCentre'],
  height: true,
  links: NUMBERS.map((n) => [`inner${n}`, `outer${n}`] as const),
};
