import type { Remedy, StandsAt, Step } from '../../said.ts';
import { plain } from '../../units/plain.ts';
import type { Units } from '../words.ts';
import { counted, lengthText, plural } from './figures.ts';
import { place } from './place.ts';

type Sayings = { readonly [S in Step['step']]: (step: Extract<Step, { step: S }>, units?: Units) => string };

const SAYINGS: Sayings = {
  'more-shim': ({ mm }, units) => `${lengthText(mm, units)} more shim`,
  'towards-plus': ({ by, unit, goes }, units) => {
    const amount = { marks: plural(counted(by), 'mark'), mm: lengthText(by, units), degrees: `${plain(by)}°` }[unit];
    return `${amount} towards +${goes ? `, ${goes}` : ''}`;
  },
  longer: ({ turns }) => `${plain(turns)} turn longer`,
  turned: ({ degrees }) => `${plain(degrees, 1)}° of turn`,
  to: ({ from, to }, units) => (from.as === 'taper' ? place(to) : `${place(from, units)} to ${place(to, units)}`),
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

export function noPose(at: readonly StandsAt[]): string {
  const where = at.map(({ adjuster, position }) => `${adjuster} at ${position}`).join(', ');
  return `No position of the wheel satisfies the links${where ? ` with ${where}` : ''}: an arm cannot reach.`;
}
