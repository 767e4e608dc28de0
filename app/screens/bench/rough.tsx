import { InputError } from '../../../core/input-error.ts';
import { roughToe } from '../../../core/measure/rough-toe.ts';
import { inFlats } from '../../../core/units/flats.ts';
import { inQuarters } from '../../../core/units/fractions.ts';
import { figure, wheelAngle } from '../../../core/units/shop.ts';
import { RoughDrawing } from '../../parts/drawings/bench/rough.tsx';
import { type At, behind, type Line, type Tool } from './tool.ts';

/** A dozen turns off a rod that holds by as many threads: something was typed wrongly, or the rods are. Trade practice, no source. */
const MANY_TURNS = 12;

const ONLY_TO_A_RACK = 'For the drive to a rack and no further: slowly, no motorway, then measure and set it properly.';

function turnsLine(at: At, corner: string, value: number, sd: number): Line {
  // Nobody turns a rough one closer than half a flat.
  const { whole, flats } = inFlats(Math.round(value * 12) / 12);
  const parts = [
    ...(whole > 0 ? [`${whole} ${whole === 1 ? 'turn' : 'turns'}`] : []),
    ...(flats > 0 ? [`${inQuarters(flats)} ${flats <= 1 ? 'flat' : 'flats'}`] : []),
  ];
  const text = parts.length === 0 ? 'stays' : `${parts.join(' ')} ${value > 0 ? 'longer' : 'shorter'}`;
  return { label: `${corner} rod`, text, off: `${figure(sd, at.units, 1)} turns`, large: true };
}

const rodsOf = (at: At) => at.choice('rods', ['behind', 'ahead']);

export const rough: Tool = {
  id: 'rough',
  title: 'Rough first toe',
  Drawing: ({ at }) => <RoughDrawing ahead={rodsOf(at) === 'ahead'} />,
  before: [
    'Wheels on the floor or the hubs held at ride height; support the car as its maker says',
    'Both front wheels pointing alike: sight along them to the rear wheels',
    'Rods and lock nuts free to turn, ends of the rods on their threads alike',
  ],
  caution: ONLY_TO_A_RACK,
  steps: (at) => [
    {
      says: 'Tape across at hub height, ahead and behind',
      asks: [
        [
          { id: 'front', label: 'A ahead', is: 'length' },
          { id: 'rear', label: 'B behind', is: 'length' },
        ],
        [
          at.askDiameter('diameter', 'Between the two marks'),
          { id: 'aim', label: 'Total toe wanted', is: 'angle', signed: true, optional: true, else: '0' },
        ],
      ],
    },
    {
      says: 'The rods',
      pick: {
        id: 'rods',
        legend: 'Where the rods are',
        of: [
          ['behind', 'Behind the axle'],
          ['ahead', 'Ahead of it'],
        ],
      },
      asks: [
        [
          { id: 'lead', label: 'Longer by, each turn', is: 'length' },
          { id: 'arm', label: 'R, rod end to steering axis', is: 'length' },
        ],
      ],
    },
    {
      says: 'The steering wheel as it stands now',
      optional: true,
      asks: [
        [
          { id: 'wheelOff', label: 'Off by, degrees; + right', is: 'angle', signed: true },
          { id: 'ratio', label: 'Steering ratio, to 1', is: 'number' },
        ],
      ],
    },
  ],
  work: (at) => {
    const distances = at.all('length', '', ['front', 'rear']);
    const rods = at.all('length', '', ['lead', 'arm']);
    const [diameter, aim] = [at.diameter(), at.angle('aim') ?? 0];
    const [wheelOff, ratio] = [at.angle('wheelOff') ?? 0, at.number('ratio') ?? at.view?.car.car.steeringRatio];
    if (!distances || !rods || diameter === undefined) return undefined;
    if (wheelOff !== 0 && ratio === undefined)
      throw new InputError('ratio', undefined, { is: 'number', low: 4, high: 40, unit: 'to 1' });
    const { totalToe, turns, perTurn } = behind('', () =>
      roughToe(
        {
          distances: { ...distances, diameter },
          aim,
          ...rods,
          rods: rodsOf(at),
          wheelOff,
          ...(ratio !== undefined && { ratio }),
        },
        at.scatter,
      ),
    );
    const most = Math.max(Math.abs(turns.LF.value), Math.abs(turns.RF.value));
    return {
      lines: [
        turnsLine(at, 'LF', turns.LF.value, turns.LF.sd),
        turnsLine(at, 'RF', turns.RF.value, turns.RF.sd),
        at.angleLine('Total toe now', totalToe),
        { label: 'One turn of one rod', text: wheelAngle(perTurn, at.units) },
      ],
      says: [
        ONLY_TO_A_RACK,
        ...(wheelOff === 0 ? [] : ['The steering wheel is put straight by the share that is equal and opposite.']),
        ...(most > MANY_TURNS
          ? ['So many turns are more than a rod has thread to spare: look at the rods and the figures again.']
          : []),
        'Keep the maker’s least thread in every rod end, and tighten the lock nuts before the wheels turn.',
      ],
      hands: [{ where: 'front', angle: 'totalToe', by: 'tape', ...totalToe }],
    };
  },
};
