import type { SuspensionKind } from './kind.ts';

/**
 * One rigid arm on two bushes, trailing or semi-trailing: it swings about the line of its bushes and nothing else. The
 * inner bush stays in its bracket; the outer one stays on the bush line, wherever its bracket is moved.
 */
export const trailingArm: SuspensionKind = {
  kind: 'trailing-arm',
  name: 'Trailing arm',
  points: ['pivotInner', 'pivotOuter', 'wheelCentre'],
  seats: ['pivotInner'],
  lines: [['pivotOuter', 'pivotInner']],
  height: true,
};
