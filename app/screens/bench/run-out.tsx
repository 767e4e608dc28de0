import { withoutRunOut } from '../../../core/measure/run-out.ts';
import { partAngle, wheelAngle } from '../../../core/units/shop.ts';
import { RunOutDrawing } from '../../parts/drawings/bench/run-out.tsx';
import { type Ask, type At, pickCorner, type Tool, WHEELS } from './tool.ts';

const angleOf = (at: At): 'camber' | 'toe' => at.choice('angle', ['camber', 'toe']);
const countOf = (at: At): 2 | 4 => (at.choice('count', ['4', '2']) === '2' ? 2 : 4);

const asked = (at: At): readonly Ask[] =>
  (countOf(at) === 2 ? ['1', '3'] : ['1', '2', '3', '4']).map((place) => ({
    ...{ id: `${at.choice('corner', WHEELS)}.${angleOf(at)}.${place}`, label: place, is: 'angle', signed: true },
  }));

export const runOut: Tool = {
  id: 'run-out',
  title: 'Run-out',
  Drawing: RunOutDrawing,
  before: [
    'Car on stands as its maker says, the wheel free to turn, the hub at its height',
    'The gauge or its clamp stays on the rim; only the wheel is turned',
    'Wheel bearing without play',
  ],
  steps: (at) => [
    { says: 'Which wheel', pick: pickCorner() },
    {
      says: 'Which angle',
      pick: {
        id: 'angle',
        legend: 'Which angle',
        of: [
          ['camber', 'Camber'],
          ['toe', 'Toe'],
        ],
      },
    },
    {
      says: 'Read it with the mark at each place',
      pick: {
        id: 'count',
        legend: 'How many places',
        of: [
          ['4', 'Four'],
          ['2', 'Two'],
        ],
      },
      asks: countOf(at) === 2 ? [asked(at)] : [asked(at).slice(0, 2), asked(at).slice(2)],
    },
  ],
  work: (at) => {
    const readings = asked(at).flatMap((one) => at.read(one) ?? []);
    if (readings.length < countOf(at)) return undefined;
    const [corner, angle] = [at.choice('corner', WHEELS), angleOf(at)];
    const sd = at.scatter.level;
    const found = withoutRunOut(readings, sd);
    return {
      lines: [
        at.angleLine(`${corner} ${angle} without it`, found.value, 'large'),
        {
          label: found.at === undefined ? 'Run-out, at the least' : 'Run-out',
          text: `${wheelAngle(found.runOut, at.units)}${found.at === undefined ? '' : `, most ${partAngle(Math.round(found.at), at.units)} past place 1`}`,
        },
      ],
      says: [
        ...(found.disagree !== undefined && found.disagree > 3 * sd
          ? ['The two pairs disagree by more than the gauge explains: read them again.']
          : []),
        ...(countOf(at) === 2
          ? ['Two places tell no run-out that stands across them: the mean is right all the same.']
          : []),
      ],
      hands: [{ where: corner, angle, by: 'level', ...found.value }],
    };
  },
};
