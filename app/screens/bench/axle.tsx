import type { AxleName } from '../../../core/contract.ts';
import { AXLES } from '../../../core/corners.ts';
import { casterAgainstFrame, casterToMeasure } from '../../../core/measure/frame-angle.ts';
import { asideFromGaps, frameAngleFrom } from '../../../core/measure/rigid-axle.ts';
import type { Measured } from '../../../core/measure/spread.ts';
import { turnedRound } from '../../../core/measure/turned-round.ts';
import { AxleDrawing } from '../../parts/drawings/bench/axle.tsx';
import type { Handed } from '../../state/bench.ts';
import { type At, behind, type Outcome, pickAxle, type Step, type Tool } from './tool.ts';

type What = 'caster' | 'pinion' | 'aside';
const whatOf = (at: At): What => at.choice('what', ['caster', 'pinion', 'aside']);
/** A rigid axle is mostly the rear one. */
const axleOf = (at: At): AxleName => at.choice('axle', ['rear', 'front']);

const isByLevel = (at: At): boolean => at.choice('frame', ['tape', 'level']) === 'level';

const STEPS: Readonly<Record<What, (at: At) => readonly Step[]>> = {
  caster: (at) => [
    {
      says: isByLevel(at) ? 'Inclinometer on the frame rail, then turned round' : 'The frame rail above a level floor',
      pick: {
        id: 'frame',
        legend: 'How the frame is measured',
        of: [
          ['tape', 'Tape'],
          ['level', 'Inclinometer'],
        ],
      },
      asks: isByLevel(at)
        ? [
            [
              { id: 'frame.first', label: 'C shows; + front down', is: 'angle', signed: true },
              { id: 'frame.second', label: 'Turned round', is: 'angle', signed: true },
            ],
          ]
        : [
            [
              { id: 'frame.front', label: 'F, front', is: 'length' },
              { id: 'frame.rear', label: 'R, rear', is: 'length' },
            ],
            [{ id: 'frame.between', label: 'Between the two places', is: 'length' }],
          ],
    },
    {
      says: 'Caster as it was read',
      asks: [
        [
          { id: 'LF.measured', label: 'LF', is: 'angle', signed: true },
          { id: 'RF.measured', label: 'RF', is: 'angle', signed: true },
        ],
      ],
    },
    {
      says: 'The maker’s caster, for a level frame',
      optional: true,
      asks: [[{ id: 'specified', label: 'Caster', is: 'angle', signed: true }]],
    },
  ],
  pinion: () => [
    {
      says: 'Inclinometer on the pinion flange, then turned round',
      asks: [
        [
          { id: 'pinion.first', label: 'C shows; + nose up', is: 'angle', signed: true },
          { id: 'pinion.second', label: 'Turned round', is: 'angle', signed: true },
        ],
      ],
    },
  ],
  aside: () => [
    {
      says: 'From the frame rail to the same place of both wheels',
      asks: [
        [
          { id: 'gap.left', label: 'A left', is: 'length' },
          { id: 'gap.right', label: 'B right', is: 'length' },
        ],
      ],
    },
  ],
};

/** How the frame stands, + front end down. */
function frameOf(at: At): Measured | undefined {
  if (isByLevel(at)) return levelled(at, 'frame.');
  const heights = at.all('length', 'frame.', ['front', 'rear', 'between']);
  return heights && behind('frame.', () => frameAngleFrom(heights, at.scatter.tape));
}

/** What an inclinometer shows that was turned round. */
function levelled(at: At, prefix: string): Measured | undefined {
  const read = at.all('angle', prefix, ['first', 'second']);
  if (!read) return undefined;
  const { angle } = behind(prefix, () => turnedRound([read.first], [read.second]));
  return { ...angle, sd: Math.hypot(angle.sd, at.scatter.level / Math.SQRT2) };
}

const WORK: Readonly<Record<What, (at: At) => Outcome | undefined>> = {
  caster: (at) => {
    const down = frameOf(at);
    if (!down) return undefined;
    const specified = at.angle('specified');
    const wheels = AXLES.front.flatMap((corner) => {
      const read = at.angle(`${corner}.measured`);
      if (read === undefined) return [];
      const value = behind(`${corner}.`, () => casterAgainstFrame(read, down.value));
      return [{ corner, value, sd: Math.hypot(down.sd, at.scatter.level) }];
    });
    return {
      lines: [
        at.angleLine('Frame, + front end down', down),
        ...wheels.map(({ corner, ...one }) => at.angleLine(`${corner} caster with the frame level`, one, 'large')),
        ...(specified === undefined
          ? []
          : [
              at.angleLine(
                'What the rack has to read on this frame',
                { value: behind('', () => casterToMeasure(specified, down.value)), sd: down.sd },
                'large',
              ),
            ]),
      ],
      says: ['Caster is specified for a level frame: one that is low in front reads as much less.'],
      hands: wheels.map(({ corner, ...one }): Handed => ({ where: corner, angle: 'caster', by: 'level', ...one })),
    };
  },
  pinion: (at) => {
    const pinion = levelled(at, 'pinion.');
    if (!pinion) return undefined;
    return {
      lines: [at.angleLine('Pinion angle, + nose up', pinion, 'large')],
      says: ['The maker’s angle between shaft and pinion goes before any other: measure the shaft the same way.'],
      hands: [{ where: axleOf(at), angle: 'pinionAngle', by: 'level', ...pinion }],
    };
  },
  aside: (at) => {
    const gaps = at.all('length', 'gap.', ['left', 'right']);
    if (!gaps) return undefined;
    const aside = behind('gap.', () => asideFromGaps(gaps, at.scatter.rule));
    return {
      lines: [at.lengthLine('Axle to the left of the middle', aside, 'large')],
      says: ['− is to the right. A track rod that is not level pulls the axle aside with the height.'],
      hands: [{ where: axleOf(at), angle: 'lateral', by: 'tape', ...aside }],
    };
  },
};

export const axle: Tool = {
  id: 'axle',
  title: 'Rigid axle',
  Drawing: ({ at }) => <AxleDrawing what={whatOf(at)} />,
  before: [
    'Level floor, car at its own height and load, settled',
    'Springs, bolts and bushes of the axle sound',
    'The same places left and right',
  ],
  steps: (at) => [
    {
      says: 'What is measured',
      pick: {
        id: 'what',
        legend: 'What is measured',
        of: [
          ['caster', 'Caster, frame tilted'],
          ['pinion', 'Pinion angle'],
          ['aside', 'Place across'],
        ],
      },
    },
    ...(whatOf(at) === 'caster' ? [] : [{ says: 'Which axle', pick: { ...pickAxle, of: [...pickAxle.of].reverse() } }]),
    ...STEPS[whatOf(at)](at),
  ],
  work: (at) => WORK[whatOf(at)](at),
};
