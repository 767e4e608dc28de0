import { CORNERS, type Corner, type Reading, type Spec } from '../../../core/contract.ts';
import type { BentMeasures } from '../../../core/index.ts';
import { includedAngle } from '../../../core/reading/axle-angles.ts';
import { wheelAngle } from '../../../core/units/shop.ts';
import { BentDrawing } from '../../parts/drawings/bench/bent.tsx';
import { Suspects } from './suspects.tsx';
import type { Ask, At, Tool } from './tool.ts';

const FRONT = ['LF', 'RF'] as const satisfies readonly Corner[];
const REAR = ['LR', 'RR'] as const satisfies readonly Corner[];
const ANGLES = ['camber', 'caster', 'sai', 'toe'] as const;
const pair = (angle: (typeof ANGLES)[number], corners: readonly Corner[] = FRONT): readonly Ask[] =>
  corners.map((corner) => ({
    id: `${corner}.${angle}`,
    label: `${corner} ${angle === 'sai' ? 'SAI' : angle}`,
    is: 'angle',
    signed: true,
  }));

/** What was read first in the visit, with what is typed here in its place. Front toe is set, and tells of nothing bent. */
function readingOf(at: At): Reading {
  const found = at.view?.rounds[0]?.record.reading ?? {};
  const wheels = CORNERS.map((corner) => {
    const typed = ANGLES.flatMap((angle) => {
      const value = at.angle(`${corner}.${angle}`);
      return value === undefined ? [] : [[angle, value] as const];
    });
    return [corner, { ...found[corner], ...Object.fromEntries(typed) }] as const;
  });
  return { ...found, ...Object.fromEntries(wheels.filter(([, wheel]) => Object.keys(wheel).length > 0)) };
}

function measuresOf(at: At): BentMeasures {
  const [sai, outer] = [at.all('angle', 'sai.', ['low', 'high']), at.all('angle', 'outer.', ['left', 'right'])];
  const [setback, makersOuter] = [at.length('setback'), at.angle('makersOuter')];
  return {
    ...(sai && { sai }),
    ...(outer && { outer }),
    ...(setback !== undefined && { setback }),
    ...(makersOuter !== undefined && { makersOuter }),
  };
}

const KINDS = [
  ['double-wishbone', 'Two arms'],
  ['strut', 'Strut'],
  ['beam-front', 'Beam'],
] as const;

export const bent: Tool = {
  id: 'bent',
  title: 'What is bent',
  Drawing: () => <BentDrawing />,
  before: [
    'Ride height and pressures right, no play in joints, bushes and bearings',
    'Rims true: a bent rim reads as a bent part',
    'Signs of the crash looked for first',
  ],
  caution:
    'Where to look, never a verdict. Measure the arms before you order parts, and never heat or bend one straight.',
  steps: (at) => [
    ...(at.view
      ? []
      : [{ says: 'Front suspension', pick: { id: 'kind', legend: 'Front suspension', of: KINDS } } as const]),
    {
      says: at.view ? 'Front, where it differs from the first reading' : 'The front wheels',
      optional: true,
      asks: [pair('camber'), pair('caster'), pair('sai')],
    },
    {
      says: at.view ? 'Rear, where it differs' : 'The rear wheels',
      optional: true,
      asks: [pair('camber', REAR), ...(at.view ? [pair('toe', REAR)] : [])],
    },
    {
      says: 'The maker’s SAI',
      optional: true,
      asks: [
        [
          { id: 'sai.low', label: 'from', is: 'angle', signed: true },
          { id: 'sai.high', label: 'to', is: 'angle', signed: true },
        ],
      ],
    },
    ...(at.view
      ? []
      : [
          {
            says: 'The maker’s camber, front',
            optional: true,
            asks: [
              [
                { id: 'camber.low', label: 'from', is: 'angle', signed: true },
                { id: 'camber.high', label: 'to', is: 'angle', signed: true },
              ],
            ],
          } as const,
        ]),
    {
      says: 'Setback, from the strings',
      optional: true,
      asks: [[{ id: 'setback', label: 'Right front further back by', is: 'length', signed: true }]],
    },
    {
      says: 'Turns: inner wheel at 20°, the outer one then',
      optional: true,
      asks: [
        [
          { id: 'outer.left', label: 'LF as the outer', is: 'angle' },
          { id: 'outer.right', label: 'RF as the outer', is: 'angle' },
        ],
        [{ id: 'makersOuter', label: 'The maker’s for it', is: 'angle' }],
      ],
    },
  ],
  work: (at) => {
    const [reading, measures] = [readingOf(at), measuresOf(at)];
    const camber = at.all('angle', 'camber.', ['low', 'high']);
    const spec: Spec = at.view ? at.view.car.spec : camber ? { front: { camber } } : {};
    const included = FRONT.flatMap((corner) => {
      const sum = includedAngle(reading[corner]);
      return sum === undefined ? [] : [{ label: `${corner} included angle`, text: wheelAngle(sum, at.units) }];
    });
    const isPair = [FRONT, REAR].some((axle) =>
      ANGLES.some((angle) => axle.every((corner) => reading[corner]?.[angle] !== undefined)),
    );
    if (!isPair && measures.setback === undefined && !measures.outer) return undefined;
    const kind = at.choice('kind', ['double-wishbone', 'strut', 'beam-front']);
    return {
      lines: included,
      part: <Suspects reading={reading} spec={spec} measures={measures} kind={kind} view={at.view} at={at} />,
    };
  },
};
