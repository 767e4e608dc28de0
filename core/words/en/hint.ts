/** Where a reading makes one look. */
import type { Hint, Suspect } from '../../said.ts';

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
};

export function hint(one: Hint): string {
  switch (one.kind) {
    case 'pattern':
      return `SAI ${one.sai}, camber ${one.camber}, included angle ${one.included} against the other side: look at ${SUSPECTS[one.look]}.`;
    case 'included':
      return `Included angles differ by ${one.difference.toFixed(2)}°: compare the two knuckles.`;
    case 'setback':
      return `Caster differs by ${one.difference.toFixed(2)}° side to side: check for setback, a wheel moved back.`;
  }
}
