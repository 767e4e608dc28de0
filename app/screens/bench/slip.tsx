import { sideSlipOf, toeFromSideSlip } from '../../../core/measure/side-slip.ts';
import { fixed } from '../../../core/units/shop.ts';
import { SlipDrawing } from '../../parts/drawings/bench/slip.tsx';
import { type At, AXLE_NAMES, behind, pickAxle, type Tool } from './tool.ts';

const isBack = (at: At): boolean => at.choice('way', ['toe', 'slip']) === 'slip';

export const slip: Tool = {
  id: 'slip',
  title: 'Side slip',
  Drawing: SlipDrawing,
  before: [
    'Straight and slowly over the plate, hands off the wheel, no brake',
    'Plate clean, free and at its zero',
    'Tyres and pressures alike',
  ],
  steps: (at) => [
    {
      says: 'Which way',
      pick: {
        id: 'way',
        legend: 'Which way',
        of: [
          ['toe', 'Slip to toe'],
          ['slip', 'Toe to slip'],
        ],
      },
    },
    isBack(at)
      ? { says: 'Total toe of the axle', asks: [[{ id: 'toe', label: 'Total toe, + in', is: 'angle', signed: true }]] }
      : {
          says: 'What the plate shows',
          pick: pickAxle,
          asks: [[{ id: 'slip', label: 'S, m/km or mm/m; + out', is: 'number', signed: true }]],
        },
  ],
  work: (at) => {
    if (isBack(at)) {
      const toe = at.angle('toe');
      if (toe === undefined) return undefined;
      return {
        lines: [{ label: 'Side slip', text: `${fixed(sideSlipOf(toe), 1, at.units)} m/km`, large: true }],
        says: CANNOT,
      };
    }
    const read = at.number('slip');
    if (read === undefined) return undefined;
    const toe = behind('', () => toeFromSideSlip(read, at.scatter.slip));
    const where = at.choice('axle', AXLE_NAMES);
    return {
      lines: [at.angleLine('Total toe', toe, 'large')],
      says: CANNOT,
      hands: [{ where, angle: 'totalToe', by: 'side-slip', ...toe }],
    };
  },
};

const CANNOT = [
  'It tells that the two wheels do not roll the same way, by about how much.',
  'It cannot tell which wheel it is, where the axle points, or toe from the pull of camber or of a tyre: measure before you turn a rod.',
];
