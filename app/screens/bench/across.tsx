import { totalToeAcross } from '../../../core/measure/distances.ts';
import { aboutLength } from '../../../core/units/shop.ts';
import { toeToLength } from '../../../core/units/toe.ts';
import { AcrossDrawing } from '../../parts/drawings/bench/across.tsx';
import { type At, AXLE_NAMES, behind, pickAxle, type Tool } from './tool.ts';

const heldTo = (at: At) => at.choice('held', ['rims', 'tyres', 'plates']);
const isPlates = (at: At): boolean => heldTo(at) === 'plates';
/** mm, of a total at a diameter: lengths of both wheels add up. */
const lengthAt = (toe: number, diameter: number): number => 2 * toeToLength(toe / 2, diameter);

export const across: Tool = {
  id: 'across',
  title: 'Tape across',
  Drawing: ({ at }) => <AcrossDrawing plates={isPlates(at)} />,
  before: [
    'Steering wheel level and clamped',
    'Rolled forward last, never back, and settled',
    'Tyres and pressures alike, wheel bearings and rods without play',
  ],
  steps: (at) => {
    const [axle, plates] = [at.choice('axle', AXLE_NAMES), isPlates(at)];
    return [
      { says: 'Which axle', pick: pickAxle },
      {
        says: 'What the tape is held to',
        pick: {
          id: 'held',
          legend: 'What the tape is held to',
          of: [
            ['rims', 'Rims'],
            ['tyres', 'Tyres'],
            ['plates', 'Plates'],
          ],
        },
        asks: [
          [
            at.askDiameter(
              `${axle}.diameter`,
              plates
                ? 'Slot to slot of a plate'
                : heldTo(at) === 'tyres'
                  ? 'Diameter at the mark'
                  : 'Diameter of the rim',
            ),
          ],
        ],
      },
      {
        says: plates ? 'Tape in the slots, ahead and behind' : 'At hub height ahead, then roll half a turn and behind',
        asks: [
          [
            { id: `${axle}.front`, label: 'A ahead', is: 'length' },
            { id: `${axle}.rear`, label: 'B behind', is: 'length' },
          ],
        ],
      },
    ];
  },
  work: (at) => {
    const axle = at.choice('axle', AXLE_NAMES);
    const diameter = at.diameter(`${axle}.diameter`);
    const read = at.all('length', `${axle}.`, ['front', 'rear']);
    if (!read || diameter === undefined) return undefined;
    const toe = behind(`${axle}.`, () => totalToeAcross({ ...read, diameter }, at.scatter.tape));
    const stated = at.view?.car.spec.toeDiameter ?? at.view?.car.car.wheel.rimDiameter;
    return {
      lines: [
        at.angleLine(`${axle === 'front' ? 'Front' : 'Rear'} total toe`, toe, 'large'),
        at.lengthLine(`At ${aboutLength(diameter, 0, at.units)}`, {
          value: lengthAt(toe.value, diameter),
          sd: lengthAt(toe.sd, diameter),
        }),
        ...(stated && Math.abs(stated - diameter) > 0.5
          ? [
              {
                label: `At the maker’s ${aboutLength(stated, 0, at.units)}`,
                text: aboutLength(lengthAt(toe.value, stated), 1, at.units),
              },
            ]
          : []),
      ],
      says: [
        'Toe-in is +. It is the sum of both wheels: which of them has it, and where the axle points, strings tell.',
      ],
      hands: [{ where: axle, angle: 'totalToe', by: isPlates(at) ? 'plates' : 'tape', ...toe }],
    };
  },
};
