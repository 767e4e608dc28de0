import * as v from 'valibot';
import { cos, radians, sin } from '../geometry/angle.ts';
import { AT, DIRECTION, lengthField, numberField, optional, rangeField } from './ask.ts';
import { base, direction, number, positive, range, text, unitDirection, wholeMarks } from './fields.ts';
import type { AdjusterKind } from './kind.ts';
import { multiples, say, within } from './steps.ts';

const schema = v.object({
  ...base('eccentric-cam'),
  at: text('the name of a point'),
  direction,
  eccentricity: positive(50, 'mm'),
  marks: wholeMarks,
  range: v.optional(range(360, 'degrees')),
  zero: v.optional(v.picklist(['middle', 'end'], 'middle or end')),
  /** Sense in which the angle grows, looking at the bolt's head on a left wheel. */
  turns: v.optional(v.picklist(['clockwise', 'anticlockwise'], 'clockwise or anticlockwise')),
  reference: number(-360, 360, 'degrees'),
});
type EccentricCam = v.InferOutput<typeof schema>;

/** Makers say to stay within 90° of the middle, where the cam still moves the arm: that is the default. */
const rangeOf = (cam: EccentricCam): readonly [number, number] =>
  cam.range ?? (cam.zero === 'end' ? [0, 180] : [-90, 90]);

/** mm along `direction` at angle θ: e·sin θ from the middle, e·(1 − cos θ) from the end of travel. */
function offset(cam: EccentricCam, angle: number): number {
  const a = radians(angle);
  return cam.eccentricity * (cam.zero === 'end' ? 1 - cos(a) : sin(a));
}

const inMarks = (cam: EccentricCam, angle: number): string => {
  const marks = (angle * cam.marks) / 360;
  const sign = marks > 0 ? '+' : '';
  return `${sign}${say(marks, 1)}`;
};

function senseOf(cam: EccentricCam, change: number, left: boolean): string {
  if (!cam.turns) return change > 0 ? 'towards +' : 'towards −';
  return ((cam.turns === 'clockwise') === change > 0) === left ? 'clockwise' : 'anticlockwise';
}

/** A bolt with an off-centre disc between two guides: point `at` moves along `direction`. */
export const eccentricCam: AdjusterKind = {
  kind: 'eccentric-cam',
  name: 'Eccentric bolt',
  schema,
  cam: true,
  touches: (cam) => ({ points: [cam.at] }),
  positions: (cam) => multiples(360 / cam.marks, ...rangeOf(cam as EccentricCam)),
  allowed: (cam) => {
    const [low, high] = rangeOf(cam as EccentricCam);
    return `an angle from ${say(low)} to ${say(high)}°`;
  },
  accepts: (cam, position) => within(position, ...rangeOf(cam as EccentricCam)),
  effect: (cam, position) => {
    const [x, y, z] = unitDirection(cam.direction);
    const t = offset(cam as EccentricCam, position as number);
    return { shift: { [cam.at]: [x * t, y * t, z * t] } };
  },
  instruction: (cam, from, to, corner) => {
    const change = (to as number) - (from as number);
    const count = say((Math.abs(change) * cam.marks) / 360, 1);
    const sense = senseOf(cam as EccentricCam, change, corner.startsWith('L'));
    const seen = cam.turns ? ', seen from the bolt head' : '';
    const at = `${inMarks(cam as EccentricCam, from as number)} → ${inMarks(cam as EccentricCam, to as number)}`;
    return `Loosen the nut, turn the bolt head ${count} mark${count === '1' ? '' : 's'} ${sense} (${at})${seen}; hold the head while tightening.`;
  },
  show: (cam, position) => `mark ${inMarks(cam as EccentricCam, position as number)} (${say(position as number, 1)}°)`,
  step: (cam) => {
    const step = 360 / cam.marks;
    const [, high] = rangeOf(cam as EccentricCam);
    const from = cam.reference as number;
    const to = from + step <= high + 1e-9 ? from + step : from - step;
    return { from: Math.min(from, to), to: Math.max(from, to), name: '1 mark towards +' };
  },
  fields: [
    AT,
    DIRECTION,
    lengthField('eccentricity', 'Eccentricity'),
    numberField('marks', 'Marks to a full turn', ''),
    {
      name: 'zero',
      label: 'Scale starts',
      ask: {
        as: 'choice',
        choices: [
          ['middle', 'at the middle of travel'],
          ['end', 'at the end of travel'],
        ],
      },
    },
    optional({
      name: 'turns',
      label: '+ is, seen from the bolt head, left wheel',
      ask: {
        as: 'choice',
        choices: [
          ['clockwise', 'clockwise'],
          ['anticlockwise', 'anticlockwise'],
        ],
      },
    }),
    optional(rangeField('Travel', 'degrees')),
    numberField('reference', 'Angle when the dimensions were taken', 'degrees'),
  ],
  start: { direction: [0, 1, 0], marks: 24, zero: 'middle', reference: 0 },
  sample: { adjuster: { reference: 0, eccentricity: 4, marks: 24, range: [-90, 90] }, from: 0, to: 45 },
  extension: { unit: 'mm', takes: ['an offset bush', 'an offset bush'] },
  tolerance: { usual: 2, unit: 'degrees' },
  effort: 6,
};
