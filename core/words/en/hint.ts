/** What a reading makes one ask, and where to look. */
import type { Angle } from '../../contract.ts';
import type { Hint, Suspect } from '../../said.ts';
import { formatAngle } from '../../units/format.ts';

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

const ANGLES: Readonly<Record<Angle, string>> = { camber: 'Camber', caster: 'Caster', toe: 'Toe', sai: 'SAI' };

/** "Camber 12.00° is unusual (mostly −6.00 to 6.00). Is it right?" */
export function unusual(angle: Angle, value: number, [low, high]: readonly [number, number]): string {
  const usual = `${formatAngle(low)} to ${formatAngle(high)}`;
  return `${ANGLES[angle]} ${formatAngle(value, { mark: true })} is unusual (mostly ${usual}). Is it right?`;
}
