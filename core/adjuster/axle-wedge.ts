import * as v from 'valibot';
import type { Place } from '../said.ts';
import { numberField } from './ask.ts';
import { base, number, several } from './fields.ts';
import type { AdjusterKind } from './kind.ts';
import { onwards } from './steps.ts';

const WEDGE = number(-10, 10, 'degrees');
const schema = v.object({
  ...base('axle-wedge'),
  /** The wedges that are to be had, degrees; + leans the steering axes' tops to the rear. None fitted is always one. */
  degrees: v.pipe(several(WEDGE, 40, 'wedges'), v.readonly()),
  reference: WEDGE,
});

const sizes = (degrees: readonly number[]): number[] => [...new Set([0, ...degrees])].sort((a, b) => a - b);
const placeOf = (position: unknown): Place => ({ as: 'wedge', degrees: position as number });

/**
 * A wedge between each leaf spring and the axle: it turns the whole axle, so that both sides get the same one, and one
 * a side, never stacked.
 */
export const axleWedge: AdjusterKind = {
  kind: 'axle-wedge',
  name: 'Axle wedge',
  schema,
  touches: () => ({ seats: ['lowerBall'] }),
  size: (wedge, position) => Math.abs(position as number) / Math.max(1e-9, ...sizes(wedge.degrees).map(Math.abs)),
  positions: (wedge) => sizes(wedge.degrees),
  allowed: (wedge) => ({ is: 'one-of', of: sizes(wedge.degrees), unit: '°' }),
  accepts: (wedge, position) => sizes(wedge.degrees).includes(position as number),
  effect: (_, position) => ({ add: { camber: 0, caster: position as number, toe: 0 } }),
  wholeAxle: true,
  bothSides: (_, position) => ({ value: position as number, most: 0 }),
  act: (_, from, to) => ({ act: 'change-wedges', from: from as number, to: to as number }),
  place: (_, position) => placeOf(position),
  step: (wedge) => {
    const [from = 0, to = from] = sizes(wedge.degrees);
    return { from, to, said: { step: 'to', from: placeOf(from), to: placeOf(to) } };
  },
  fields: [
    { name: 'degrees', label: 'Wedges to be had', ask: { as: 'numbers', unit: 'degrees' } },
    numberField('reference', 'Fitted when the dimensions were taken', 'degrees'),
  ],
  start: { reference: 0 },
  sample: { adjuster: { reference: 0, degrees: [0.5, 1, 1.5, 2] }, from: 0, to: 1.5 },
  extension: {
    unit: 'degrees',
    takes: ['wedge-the-other-way', 'thicker-wedge'],
    beyond: (wedge, end) => onwards(sizes(wedge.degrees), end, 0.5, 3),
  },
  tolerance: { usual: 0.1, unit: 'degrees' },
  effort: 40,
};
