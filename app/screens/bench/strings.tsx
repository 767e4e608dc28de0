import { type AxleName, CORNERS, type Corner } from '../../../core/contract.ts';
import type { Measured } from '../../../core/measure/spread.ts';
import { type StringedWheel, toeFromStrings } from '../../../core/measure/strings.ts';
import { StringsDrawing } from '../../parts/drawings/bench/strings.tsx';
import type { Handed } from '../../state/bench.ts';
import { units } from '../../state/preferences.ts';
import type { At, Line, Step, Tool } from './tool.ts';

/** A string that stands anyhow is found from both wheels beside it. */
const BESIDE = { LF: 'LR', LR: 'LF', RF: 'RR', RR: 'RF' } as const satisfies Record<Corner, Corner>;

const isFound = (at: At): boolean => at.choice('set', ['found', 'parallel']) === 'found';

function wheelOf(at: At, corner: Corner): StringedWheel | undefined {
  const edges = at.all('length', `wheels.${corner}.`, ['ahead', 'behind']);
  const hub = at.length(`wheels.${corner}.hub`);
  return edges && { ...edges, ...(hub !== undefined && { hub }) };
}

const stepOf = (side: 'left' | 'right', corners: readonly Corner[]): Step => ({
  says: `String to the ${side} rims at hub height, square to it`,
  asks: corners.map((corner) => [
    { id: `wheels.${corner}.ahead`, label: `${corner} A`, is: 'length' },
    { id: `wheels.${corner}.hub`, label: `${corner} H`, is: 'length', optional: true },
    { id: `wheels.${corner}.behind`, label: `${corner} B`, is: 'length' },
  ]),
});

/** With the sign that this shop shows it with. */
function thrustLine(at: At, { value, sd }: Measured): Line {
  const isPlus = units.value.thrust === 'right-plus';
  return at.angleLine(`Thrust angle, ${isPlus ? '+' : '−'} points to the right`, {
    value: isPlus ? value : -value,
    sd,
  });
}

export const strings: Tool = {
  id: 'strings',
  title: 'Strings',
  Drawing: StringsDrawing,
  before: [
    'Steering wheel level and clamped, car settled on a level floor',
    'A string or straight edge outside each side, at hub height, touching nothing',
    'Run-out of the rims known: measure at the same marks',
  ],
  steps: (at) => [
    {
      says: 'How the strings stand',
      pick: {
        id: 'set',
        legend: 'How the strings stand',
        of: [
          ['found', 'Anyhow: found from the hubs'],
          ['parallel', 'Set parallel to the centre line'],
        ],
      },
    },
    stepOf('left', ['LF', 'LR']),
    stepOf('right', ['RF', 'RR']),
    { says: 'Rim, edge to edge where the rule touches', asks: [[at.askDiameter('diameter', 'Diameter')]] },
    ...(isFound(at)
      ? [
          {
            says: 'Track, between the places that H is measured to',
            asks: [
              [
                { id: 'track.front', label: 'Front', is: 'length' },
                { id: 'track.rear', label: 'Rear', is: 'length' },
              ],
            ],
          } as const,
        ]
      : []),
    {
      says: 'Wheelbase, hub to hub',
      optional: !isFound(at),
      asks: [
        [
          { id: 'wheelbase.left', label: 'Left', is: 'length' },
          { id: 'wheelbase.right', label: 'Right', is: 'length', optional: true },
        ],
      ],
    },
  ],
  work: (at) => {
    const wheels = Object.fromEntries(
      CORNERS.flatMap((corner) => {
        const wheel = wheelOf(at, corner);
        const isAlone = isFound(at) && !wheelOf(at, BESIDE[corner]);
        return wheel && !isAlone ? [[corner, wheel]] : [];
      }),
    );
    const [diameter, track, bases] = [
      at.diameter(),
      isFound(at) ? at.all('length', 'track.', ['front', 'rear']) : undefined,
      { left: at.length('wheelbase.left'), right: at.length('wheelbase.right') },
    ];
    if (Object.keys(wheels).length === 0 || diameter === undefined) return undefined;
    if (isFound(at) && (!track || bases.left === undefined)) return undefined;
    const found = toeFromStrings(
      {
        ...{ wheels, diameter },
        ...(track && { track }),
        ...(bases.left !== undefined && {
          wheelbase: { left: bases.left, ...(bases.right !== undefined && { right: bases.right }) },
        }),
      },
      at.scatter,
    );
    const { toe, totalToe, thrustAngle, steerAhead, setback } = found;
    const skew = (['left', 'right'] as const).flatMap((side) => {
      const one = found.strings[side];
      return one ? [at.angleLine(`The ${side} string itself, + front end out`, one)] : [];
    });
    return {
      lines: [
        ...CORNERS.flatMap((corner): Line[] => {
          const one = toe[corner];
          return one ? [at.angleLine(`${corner} toe`, one, 'large')] : [];
        }),
        ...(['front', 'rear'] satisfies AxleName[]).flatMap((axle) => {
          const one = totalToe[axle];
          return one ? [at.angleLine(`${axle === 'front' ? 'Front' : 'Rear'} total`, one)] : [];
        }),
        ...(thrustAngle ? [thrustLine(at, thrustAngle)] : []),
        ...(steerAhead ? [at.angleLine('Steer-ahead, + to the right', steerAhead)] : []),
        ...(setback ? [at.lengthLine('Setback, + right front further back', setback.length)] : []),
        ...(setback?.angle ? [at.angleLine('Setback as an angle', setback.angle)] : []),
        ...skew,
      ],
      says: [
        'Toe is against the centre line of the car.',
        ...(setback
          ? ['Setback is the difference of the two wheelbases: a rear axle that is not square makes one too.']
          : []),
      ],
      hands: CORNERS.flatMap((corner): Handed[] => {
        const one = toe[corner];
        return one ? [{ where: corner, angle: 'toe', by: 'string', ...one }] : [];
      }),
    };
  },
};
