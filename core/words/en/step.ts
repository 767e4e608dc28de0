import type { Remedy, StandsAt, Step } from '../../said.ts';
import { figure, lengthText, partAngle } from '../../units/shop.ts';
import type { Units } from '../words.ts';
import { counted, plural } from './figures.ts';
import { place } from './place.ts';

type Sayings = { readonly [S in Step['step']]: (step: Extract<Step, { step: S }>, units?: Units) => string };

const SAYINGS: Sayings = {
  'more-shim': ({ mm }, units) => `${lengthText(mm, units)} more shim`,
  'towards-plus': ({ by, unit, goes, unsided }, units) => {
    const amount = { marks: plural(counted(by), 'mark'), mm: lengthText(by, units), degrees: partAngle(by, units) }[
      unit
    ];
    return unsided ? `${amount} ${goes}` : `${amount} towards +${goes ? `, ${goes}` : ''}`;
  },
  longer: ({ turns }, units) => `${figure(turns, units)} turn longer`,
  turned: ({ degrees }, units) => `${partAngle(degrees, units, 1)} of turn`,
  to: ({ from, to }, units) =>
    from.as === 'taper' ? place(to, units) : `${place(from, units)} to ${place(to, units)}`,
};

export const step = (one: Step, units?: Units): string =>
  (SAYINGS[one.step] as (step: Step, units?: Units) => string)(one, units);

const REMEDIES: Readonly<Record<Remedy, string>> = {
  'offset-bush': 'an offset bush',
  'offset-bush-or-thinner-bracket': 'an offset bush or a thinner bracket',
  'more-shims': 'more shims, longer studs',
  'shorter-rod': 'a shorter rod',
  'longer-rod': 'a longer rod',
  'longer-slots': 'longer slots or an offset plate',
  'more-tilt': 'a bolt or bracket with more tilt',
  'wedge-the-other-way': 'a wedge the other way',
  'thicker-wedge': 'a thicker wedge',
  'more-taper': 'a shim with more taper',
};
export const remedy = (one: Remedy): string => REMEDIES[one];

export function noPose(at: readonly StandsAt[], units?: Units): string {
  const stands = (position: StandsAt['position']) =>
    typeof position === 'number' ? figure(position, units) : position;
  const where = at.map(({ adjuster, position }) => `${adjuster} at ${stands(position)}`).join(', ');
  return `No position of the wheel satisfies the links${where ? ` with ${where}` : ''}: an arm cannot reach.`;
}
