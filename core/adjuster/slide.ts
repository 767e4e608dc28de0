import * as v from 'valibot';
import { scale } from '../geometry/vector.ts';
import { AT, DIRECTION, lengthField, numberField, rangeField } from './ask.ts';
import { bearing } from './bearing.ts';
import { base, coarse, direction, number, positive, range, text, unitDirection } from './fields.ts';
import type { AdjusterKind } from './kind.ts';
import { MOST_FURTHER, multiples, onwards, stepFrom, within } from './steps.ts';

const fields = v.object({
  ...base('slide'),
  at: text({ is: 'point-name' }),
  direction,
  step: positive(100, 'mm'),
  range: range(200, 'mm'),
  reference: number(-200, 200, 'mm'),
});
const schema = v.pipe(
  fields,
  v.forward(
    coarse((plate: v.InferOutput<typeof fields>) => plate, 'mm'),
    ['step'],
  ),
);

/** Points at which it holds no rubber bush of an arm: top mounts, ball joints, the ends of a tie rod. */
const NO_BUSH = /^(strutTop$|tie)|Ball$/;

/** A plate or bracket in slots (camber/caster plate, slotted arm): point `at` moves along `direction`. */
export const slide: AdjusterKind = {
  kind: 'slide',
  name: 'Sliding plate',
  schema,
  touches: (plate) => ({ points: [plate.at] }),
  positions: (plate) => multiples(plate.step, plate.range[0], plate.range[1]),
  allowed: (plate) => ({ is: 'place', on: 'mm', low: plate.range[0], high: plate.range[1] }),
  accepts: (plate, position) => within(position, plate.range[0], plate.range[1]),
  effect: (plate, position) => {
    const [x, y, z] = unitDirection(plate.direction);
    const t = position as number;
    return { shift: { [plate.at]: [x * t, y * t, z * t] } };
  },
  even: () => true,
  act: ({ at, direction }, from, to) => {
    const [a, b] = [from as number, to as number];
    const goes = bearing(scale(direction, b - a));
    return { act: 'slide', by: b - a, from: a, to: b, goes, ...(!NO_BUSH.test(at) && { bush: true }) };
  },
  place: (_, position) => ({ as: 'scale', mm: position as number }),
  step: ({ reference, step, direction, range: [, high] }) => ({
    ...stepFrom(reference as number, step, high),
    said: { step: 'towards-plus', by: step, unit: 'mm', goes: bearing(direction) },
  }),
  fields: [
    AT,
    DIRECTION,
    lengthField('step', 'Set to the nearest'),
    rangeField('Travel', 'mm'),
    numberField('reference', 'Place on the scale when the dimensions were taken', 'mm'),
  ],
  start: { direction: [0, 1, 0], step: 1, range: [-10, 10], reference: 0 },
  sample: { adjuster: { reference: 0, step: 1, range: [-10, 10] }, from: -2, to: 4 },
  extension: {
    unit: 'mm',
    takes: ['longer-slots', 'longer-slots'],
    beyond: (plate, end) => onwards(slide.positions(plate), end, Math.min(plate.step, 1), MOST_FURTHER),
  },
  tolerance: { usual: 0.5, unit: 'mm' },
  live: true,
  effort: 6,
};
