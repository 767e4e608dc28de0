/** Where a reading makes one look. */
import type { Hint, Named, Suspect } from '../../said.ts';

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
    case 'places-first':
      return `The two sides differ, and nobody knows where ${listed(one.unknown)} stood: look at that first, it may be all there is.`;
  }
}

/** "LF Front cam, LF Rear cam and RF Front cam" */
function listed(all: readonly Named[]): string {
  const names = all.map(({ corner, name }) => `${corner} ${name}`);
  return [names.slice(0, -1).join(', '), ...names.slice(-1)].filter(Boolean).join(' and ');
}
