import type { SuspensionPicture } from './suspension-picture.ts';

export const trailingArm: SuspensionPicture = {
  name: 'Trailing arm',
  points: {
    pivotInner: [330, 290, 295],
    pivotOuter: [420, 610, 305],
    wheelCentre: [0, 770, 320],
  },
  links: [],
  // One welded arm: its bush line, and a leg from each bush to the hub.
  solid: [['wheelCentre', 'pivotInner', 'pivotOuter', 'wheelCentre']],
  upright: [],
};
