import { CORNERS, type Corner } from '../../../core/contract.ts';
import { isLeft } from '../../../core/corners.ts';
import { camberFromPlumb, floorSlope, onLevelFloor } from '../../../core/measure/plumb.ts';
import type { Measured } from '../../../core/measure/spread.ts';
import { turnedRound } from '../../../core/measure/turned-round.ts';
import { wheelAngle } from '../../../core/units/shop.ts';
import { CamberDrawing } from '../../parts/drawings/bench/camber.tsx';
import type { Handed } from '../../state/bench.ts';
import { type At, behind, pickCorner, type Tool, WHEELS } from './tool.ts';

const isLevel = (at: At): boolean => at.choice('with', ['plumb', 'level']) === 'level';

/** Degrees that the floor goes up to the left; 0 where nobody measured it. */
function slopeOf(at: At): number {
  const [higher, track] = [at.length('higher'), at.length('track')];
  return higher === undefined || track === undefined ? 0 : floorSlope(higher, track);
}

function camberOf(at: At, corner: Corner): Measured | undefined {
  const side = isLeft(corner) ? 'left' : 'right';
  const level = (read: Measured | undefined) => read && onLevelFloor(read, slopeOf(at), side);
  if (!isLevel(at)) {
    const [read, diameter] = [at.all('length', `${corner}.`, ['above', 'below']), at.diameter()];
    return level(
      read && diameter !== undefined
        ? behind(`${corner}.`, () => camberFromPlumb({ ...read, diameter }, at.scatter.rule))
        : undefined,
    );
  }
  const [first, second] = [at.angle(`${corner}.first`), at.angle(`${corner}.second`)];
  if (first === undefined) return undefined;
  // Not turned round, it is as true as its maker made it.
  if (second === undefined) return level({ value: first, sd: at.scatter.level });
  const { angle } = behind(`${corner}.`, () => turnedRound([first], [second]));
  return level({ ...angle, sd: Math.hypot(angle.sd, at.scatter.level / Math.SQRT2) });
}

export const camber: Tool = {
  id: 'camber',
  title: 'Camber',
  Drawing: ({ at }) => <CamberDrawing level={isLevel(at)} />,
  before: [
    'Wheels straight ahead, car settled, nobody in it',
    'Tyres and pressures alike, wheel bearing and ball joints without play',
    'Run-out of the rim compensated',
  ],
  steps: (at) => {
    const corner = at.choice('corner', WHEELS);
    return [
      {
        says: 'What it is measured with',
        pick: {
          id: 'with',
          legend: 'What it is measured with',
          of: [
            ['plumb', 'Plumb line'],
            ['level', 'Level'],
          ],
        },
      },
      { says: 'Which wheel', pick: pickCorner() },
      isLevel(at)
        ? {
            says: 'Level upright on the rim, then turned round by half a turn',
            asks: [
              [
                { id: `${corner}.first`, label: 'It shows; + top out', is: 'angle', signed: true },
                { id: `${corner}.second`, label: 'Turned round', is: 'angle', signed: true },
              ],
            ],
          }
        : {
            says: 'Line to the rim above and below the hub',
            asks: [
              [
                { id: `${corner}.above`, label: 'A above', is: 'length' },
                { id: `${corner}.below`, label: 'B below', is: 'length' },
              ],
              [at.askDiameter('diameter', 'Between the two along the rim')],
            ],
          },
      {
        says: 'The floor, if it is not level across',
        optional: true,
        asks: [
          [
            { id: 'higher', label: 'Left higher by', is: 'length', signed: true },
            { id: 'track', label: 'Wheel to wheel', is: 'length' },
          ],
        ],
      },
    ];
  },
  work: (at) => {
    const found = CORNERS.flatMap((corner) => {
      const one = camberOf(at, corner);
      return one ? [{ corner, one }] : [];
    });
    if (found.length === 0) return undefined;
    const slope = slopeOf(at);
    return {
      lines: found.map(({ corner, one }) => at.angleLine(`${corner} camber`, one, 'large')),
      says: slope === 0 ? [] : [`The floor’s ${wheelAngle(Math.abs(slope), at.units)} are taken out.`],
      hands: found.map(
        ({ corner, one }): Handed => ({ where: corner, angle: 'camber', by: isLevel(at) ? 'level' : 'plumb', ...one }),
      ),
    };
  },
};
