/** Where a reading makes one look. */
import type { Hint, Named, Suspect } from '../../said.ts';
import { aboutLength, type ShopUnits, wheelAngle } from '../../units/shop.ts';

const SUSPECTS: Readonly<Record<Suspect, string>> = {
  'knuckle-or-spindle': 'the knuckle or spindle',
  'moved-pivot': 'a pivot that has moved: an arm or the crossmember',
  'lower-arm': 'the lower arm',
  'upper-arm': 'the upper arm',
  'tower-and-knuckle-or-strut': 'the tower, in at the top, and the knuckle or strut',
  'lower-arm-or-tower-out': 'the lower arm, or the tower, out at the top',
  'tower-in': 'the tower, in at the top',
  'knuckle-or-strut': 'the knuckle or strut',
  spindle: 'the spindle',
  'axle-beam': 'the axle beam',
  subframe: 'the subframe or crossmember',
  'steering-arm': 'the steering arms, and whether the rack or linkage stands in its middle',
  'wheel-moved-back': 'the lower arm, its rear bush and what it is bolted to',
  'sai-first': 'SAI: read that too, it tells the knuckle from an arm that has moved',
  'rear-arm': 'the arms and links of that wheel, its knuckle, and what they are bolted to',
  'axle-tube': 'the axle tube, and the hub on it',
  'rear-axle': 'how the axle is held: springs and their centre bolts, links and bushes',
  'rear-subframe': 'the rear subframe and its mounts',
};

export function hint(one: Hint, units?: ShopUnits): string {
  switch (one.kind) {
    case 'pattern':
      return `SAI ${one.sai}, camber ${one.camber}, included angle ${one.included} against the other side: look at ${SUSPECTS[one.look]}.`;
    case 'included':
      return `Included angles differ by ${wheelAngle(one.difference, units)}: compare the two knuckles.`;
    case 'setback':
      return `Caster differs by ${wheelAngle(one.difference, units)} side to side: check for setback, a wheel moved back.`;
    case 'against-maker':
      return `SAI ${one.sai}, camber ${one.camber}, included angle ${one.included} against the maker’s: look at ${SUSPECTS[one.look]}.`;
    case 'shifted':
      return `Both lower ends stand to the ${one.to}: camber and SAI are off by as much, the included angles are right. Look at ${SUSPECTS[one.look]}, gone to the ${one.to}.`;
    case 'moved-back':
      return `This wheel is ${aboutLength(one.length, 0, units)} further back than the other${one.casterLow ? ', and its caster is less' : ''}: look at ${SUSPECTS[one.look]}.`;
    case 'turns':
      return one.against === 'maker'
        ? `On the outside of a turn it stands ${wheelAngle(Math.abs(one.by), units)} ${one.by > 0 ? 'further' : 'less far'} than the maker says: look at ${SUSPECTS[one.look]}.`
        : `On the outside of a turn the ${one.by > 0 ? 'left' : 'right'} wheel goes ${wheelAngle(Math.abs(one.by), units)} further than the other: look at ${SUSPECTS[one.look]}.`;
    case 'camber':
      return one.against === 'maker'
        ? `Camber is ${wheelAngle(Math.abs(one.by), units)} ${one.by > 0 ? 'above' : 'below'} the middle of its window: look at ${SUSPECTS[one.look]}.`
        : `The left wheel leans out ${wheelAngle(Math.abs(one.by), units)} ${one.by > 0 ? 'more' : 'less'} than the right: look at ${SUSPECTS[one.look]}.`;
    case 'askew':
      return `Both rear wheels point to the ${one.by > 0 ? 'right' : 'left'}, by ${wheelAngle(Math.abs(one.by), units)}, and nothing sets their toe: look at ${SUSPECTS[one.look]}.`;
    case 'rear-toe':
      return `This wheel points ${one.by > 0 ? 'in' : 'out'} by ${wheelAngle(Math.abs(one.by), units)} and nothing sets its toe: look at ${SUSPECTS[one.look]}.`;
    case 'places-first':
      return `The two sides differ, and nobody knows where ${listed(one.unknown)} stood: look at that first, it may be all there is.`;
  }
}

/** "LF Front cam, LF Rear cam and RF Front cam" */
function listed(all: readonly Named[]): string {
  const names = all.map(({ corner, name }) => `${corner} ${name}`);
  return [names.slice(0, -1).join(', '), ...names.slice(-1)].filter(Boolean).join(' and ');
}
