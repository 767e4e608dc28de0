import * as v from 'valibot';
import { cos, radians, sin } from '../geometry/angle.ts';
import { sub } from '../geometry/vector.ts';
import { casterOf, saiOf } from '../geometry/wheel-angles.ts';
import { tidy } from '../units/plain.ts';
import { numberField } from './ask.ts';
import { base, number, positive, wholeMarks } from './fields.ts';
import type { AdjusterKind } from './kind.ts';
import { multiples, within } from './steps.ts';

const schema = v.object({
  ...base('offset-sleeve'),
  /** Degrees that the sleeve tilts the steering axis. */
  degrees: positive(10, 'degrees'),
  marks: wholeMarks,
  reference: number(-360, 360, 'degrees'),
});

/**
 * A sleeve with an off-centre bore in the axle's seat of the upper ball joint. At the angle φ it tilts the steering axis:
 * SAI falls (and camber rises) by degrees·cos φ, caster rises by degrees·sin φ, both as projected angles.
 */
export const offsetSleeve: AdjusterKind = {
  kind: 'offset-sleeve',
  name: 'Offset sleeve',
  schema,
  touches: () => ({ seats: ['upperBall', 'lowerBall'] }),
  positions: (sleeve) => multiples(360 / sleeve.marks, 0, 360 - 360 / sleeve.marks),
  allowed: () => ({ is: 'place', on: 'angle', low: 0, high: 360 }),
  accepts: (_, position) => within(position, -360, 360),
  byPoints: true,
  effect: (sleeve, position, { points }) => {
    const axis = sub(points.upperBall!, points.lowerBall!);
    // The points hold with the sleeve at its reference, so that its tilt there is in the axis already.
    const [here, zero] = [radians(position as number), radians(sleeve.reference as number)];
    const caster = casterOf(axis) + sleeve.degrees * (sin(here) - sin(zero));
    const sai = saiOf(axis) - sleeve.degrees * (cos(here) - cos(zero));
    const height = axis[2];
    return {
      shift: {
        upperBall: [-height * Math.tan(radians(caster)) - axis[0], -height * Math.tan(radians(sai)) - axis[1], 0],
      },
    };
  },
  act: (_, from, to) => ({ act: 'turn-sleeve', from: tidy(from as number), to: tidy(to as number) }),
  place: (_, position) => ({ as: 'angle', degrees: tidy(position as number) }),
  step: (sleeve) => {
    const from = sleeve.reference as number;
    return { from, to: from + 360 / sleeve.marks, said: { step: 'turned', degrees: 360 / sleeve.marks } };
  },
  fields: [
    numberField('degrees', 'Tilts the steering axis by', 'degrees'),
    numberField('marks', 'Positions to a full turn', ''),
    numberField('reference', 'Turned to, when the dimensions were taken', 'degrees'),
  ],
  start: { marks: 12, reference: 0 },
  sample: { adjuster: { reference: 0, degrees: 1, marks: 12 }, from: 0, to: 120 },
  tolerance: { usual: 3, unit: 'degrees' },
  effort: 20,
};
