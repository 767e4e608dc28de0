import * as v from 'valibot';
import { asin, degrees, radians, sin } from '../geometry/angle.ts';
import { lengthField, numberField, optional, rangeField } from './ask.ts';
import { base, coarse, number, positive, range } from './fields.ts';
import type { AdjusterKind } from './kind.ts';
import { ruleText } from './rule-text.ts';
import { multiples, onwards, stepFrom, within } from './steps.ts';

/**
 * Tilt directly, in degrees; or, with `eccentricity` and `spacing`, by a cam bolt in one of the two holes: the position
 * is then the cam's angle, and the strut tilts by asin(eccentricity·sin θ / spacing), spacing = between the two bolts.
 */
const fields = v.object({
  ...base('clamp-bolt'),
  step: positive(180, 'degrees'),
  range: range(180, 'degrees'),
  eccentricity: v.optional(positive(20, 'mm')),
  spacing: v.optional(positive(200, 'mm')),
  reference: number(-180, 180, 'degrees'),
});
type ClampBolt = v.InferOutput<typeof fields>;
const schema = v.pipe(
  fields,
  v.forward(
    coarse((bolt: ClampBolt) => bolt, 'degrees'),
    ['step'],
  ),
  v.forward(
    v.check(
      ({ eccentricity: e, spacing: s }) => (e === undefined) === (s === undefined) && (e ?? 0) < (s ?? 1),
      ruleText({ is: 'cam-spacing' }),
    ),
    ['spacing'],
  ),
);

/** Degrees that the wheel's top leans out. */
function tilt({ eccentricity, spacing }: ClampBolt, position: number): number {
  if (eccentricity === undefined || spacing === undefined) return position;
  return degrees(asin((eccentricity * sin(radians(position))) / spacing));
}

/** The bolts that clamp a strut to its knuckle: loosened, the knuckle tilts against the strut. */
export const clampBolt: AdjusterKind = {
  kind: 'clamp-bolt',
  name: 'Strut clamp bolt',
  schema,
  touches: () => ({ line: true }),
  positions: (bolt) => multiples(bolt.step, bolt.range[0], bolt.range[1]),
  allowed: (bolt) => ({ is: 'place', on: 'degrees', low: bolt.range[0], high: bolt.range[1] }),
  accepts: (bolt, position) => within(position, bolt.range[0], bolt.range[1]),
  effect: (bolt, position) => ({ tilt: tilt(bolt as ClampBolt, position as number) }),
  // By hand; a cam bolt is a cam.
  even: ({ eccentricity }) => eccentricity === undefined,
  act: (bolt, from, to, { gains: { camber } = {} }) => ({
    act: 'tilt',
    by: tilt(bolt as ClampBolt, to as number) - tilt(bolt as ClampBolt, from as number),
    from: from as number,
    to: to as number,
    with: bolt.eccentricity === undefined ? 'hand' : 'cam-bolt',
    ...(camber !== undefined && { camber }),
  }),
  place: (_, position) => ({ as: 'tilt', degrees: position as number }),
  step: ({ reference, step, range: [, high] }) => ({
    ...stepFrom(reference as number, step, high),
    said: { step: 'towards-plus', by: step, unit: 'degrees' },
  }),
  fields: [
    numberField('step', 'Set to the nearest', 'degrees'),
    rangeField('Travel', 'degrees'),
    numberField('reference', 'Where it stood when the dimensions were taken', 'degrees'),
    optional(lengthField('eccentricity', 'Cam bolt: eccentricity', 'empty where the knuckle is tilted by hand')),
    optional(lengthField('spacing', 'Cam bolt: between the two bolts')),
  ],
  start: { step: 0.1, range: [-1.5, 1.5], reference: 0 },
  sample: { adjuster: { reference: 0, step: 0.1, range: [-1.5, 1.5] }, from: -0.5, to: 0.7 },
  extension: {
    unit: 'degrees',
    takes: ['more-tilt', 'more-tilt'],
    // Turned by a cam bolt its position is the cam's angle, which has no beyond.
    beyond: (bolt, end) =>
      bolt.eccentricity === undefined ? onwards(clampBolt.positions(bolt), end, Math.max(bolt.step, 0.1), 2) : [],
  },
  tolerance: { usual: 0.1, unit: 'degrees' },
  live: true,
  effort: 8,
};
