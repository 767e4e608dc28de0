import * as v from 'valibot';
import { isLeft } from '../corners.ts';
import { asin, cos, degrees, radians, sin } from '../geometry/angle.ts';
import { scale } from '../geometry/vector.ts';
import type { Bearing, Sense } from '../said.ts';
import { AT, DIRECTION, lengthField, numberField, optional, rangeField } from './ask.ts';
import { bearing } from './bearing.ts';
import { base, choice, coarse, direction, number, positive, range, text, unitDirection, wholeMarks } from './fields.ts';
import type { AdjusterKind, Gains } from './kind.ts';
import { multiples, stepFrom, within } from './steps.ts';
import { usualShare } from './usual.ts';

const fields = v.object({
  ...base('eccentric-cam'),
  at: text({ is: 'point-name' }),
  direction,
  eccentricity: positive(50, 'mm'),
  marks: wholeMarks,
  /** Marks between two of its positions: ½ where it is set between marks by eye. Default 1. */
  stepMarks: v.optional(positive(10, 'marks')),
  range: v.optional(range(360, 'degrees')),
  zero: v.optional(choice(['middle', 'end'])),
  /** Sense in which the angle grows, looking at the bolt's head on a left wheel. */
  turns: v.optional(choice(['clockwise', 'anticlockwise'])),
  reference: number(-360, 360, 'degrees'),
});
type EccentricCam = v.InferOutput<typeof fields>;

/** Makers say to stay within 90° of the middle, where the cam still moves the arm: that is the default. */
const rangeOf = (cam: EccentricCam): readonly [number, number] =>
  cam.range ?? (cam.zero === 'end' ? [0, 180] : [-90, 90]);

const inMarks = (cam: EccentricCam, angle: number): number => (angle * cam.marks) / 360;

const travelOf = (cam: EccentricCam) => {
  const [low, high] = rangeOf(cam);
  return { step: cam.stepMarks ?? 1, range: [inMarks(cam, low), inMarks(cam, high)] as const };
};
const schema = v.pipe(fields, v.forward(coarse(travelOf, 'marks'), ['stepMarks']));

/** mm along `direction` at angle θ: e·sin θ from the middle, e·(1 − cos θ) from the end of travel. */
function offset(cam: EccentricCam, angle: number): number {
  const a = radians(angle);
  return cam.eccentricity * (cam.zero === 'end' ? 1 - cos(a) : sin(a));
}

/** Which way to turn it, seen from the bolt's head; nothing where it is not on file. */
function senseOf({ turns }: EccentricCam, change: number, left: boolean): Sense | undefined {
  if (!turns) return undefined;
  return ((turns === 'clockwise') === change > 0) === left ? 'clockwise' : 'anticlockwise';
}

/** Where the point is at an angle, for a cam of which nobody said which way its marks count. */
function sideOf(cam: EccentricCam, angle: number): Bearing | 'end' | undefined {
  if (cam.turns) return undefined;
  return cam.zero === 'end' ? 'end' : bearing(scale(cam.direction, Math.sign(angle) || 1));
}

/** What a rack shows while it is turned: caster has to be swept for. */
function shown(gains: Gains | undefined): { angle: 'camber' | 'toe'; by: number } | undefined {
  const { camber = 0, toe = 0 } = gains ?? {};
  const angle = Math.abs(camber) >= Math.abs(toe) ? 'camber' : 'toe';
  const by = angle === 'camber' ? camber : toe;
  return Math.abs(by) < HARDLY ? undefined : { angle, by };
}
/** Degrees that no gauge tells from nothing. */
const HARDLY = 0.03;

/** A bolt with an off-centre disc between two guides: point `at` moves along `direction`. */
export const eccentricCam: AdjusterKind = {
  kind: 'eccentric-cam',
  name: 'Eccentric bolt',
  schema,
  cam: true,
  fromDeadCentre: (cam, position) => {
    const turn = radians(position as number);
    // How fast it moves the point: cos θ from the middle, sin θ from the end.
    const pace = Math.abs((cam as EccentricCam).zero === 'end' ? sin(turn) : cos(turn));
    return degrees(asin(pace));
  },
  touches: (cam) => ({ points: [cam.at] }),
  positions: (cam) => multiples((360 / cam.marks) * (cam.stepMarks ?? 1), ...rangeOf(cam as EccentricCam)),
  allowed: (cam) => {
    const [low, high] = rangeOf(cam as EccentricCam);
    return { is: 'place', on: 'angle', low, high };
  },
  accepts: (cam, position) => within(position, ...rangeOf(cam as EccentricCam)),
  effect: (cam, position) => {
    const [x, y, z] = unitDirection(cam.direction);
    const t = offset(cam as EccentricCam, position as number);
    return { shift: { [cam.at]: [x * t, y * t, z * t] } };
  },
  act: (given, from, to, { corner, gains }) => {
    const cam = given as EccentricCam;
    const [a, b] = [inMarks(cam, from as number), inMarks(cam, to as number)];
    const sense = senseOf(cam, b - a, isLeft(corner));
    const gone = offset(cam, to as number) - offset(cam, from as number);
    const goes = Math.abs(gone) < 1e-9 ? {} : { goes: bearing(scale(cam.direction, gone)) };
    const shows = sense ? undefined : shown(gains);
    const turn = { act: 'turn-marks', at: cam.at, by: b - a, from: a, to: b } as const;
    return { ...turn, ...goes, ...(sense && { sense }), ...(shows && { shows }) };
  },
  place: (cam, position) => {
    const side = sideOf(cam as EccentricCam, position as number);
    return {
      as: 'mark',
      marks: inMarks(cam as EccentricCam, position as number),
      degrees: position as number,
      ...(side && { side }),
    };
  },
  step: (cam) => ({
    ...stepFrom(cam.reference as number, 360 / cam.marks, rangeOf(cam as EccentricCam)[1]),
    said: {
      ...{ step: 'towards-plus', by: 1, unit: 'marks' },
      ...(!cam.turns && { unsided: true, goes: bearing(cam.direction) }),
    },
  }),
  fields: [
    AT,
    DIRECTION,
    lengthField('eccentricity', 'Eccentricity'),
    numberField('marks', 'Marks to a full turn', ''),
    optional({
      name: 'stepMarks',
      label: 'Set to the nearest',
      ask: {
        as: 'choice',
        choices: [
          [0.5, 'half mark, by eye'],
          [1, 'mark'],
        ],
      },
    }),
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
  start: { direction: [0, 1, 0], marks: 24, stepMarks: 0.5, zero: 'middle', reference: 0 },
  sample: {
    adjuster: { direction: [0, 1, 0], reference: 0, eccentricity: 4, marks: 24, range: [-90, 90] },
    from: 0,
    to: 45,
  },
  extension: { unit: 'mm', takes: ['offset-bush', 'offset-bush'] },
  tolerance: { usual: 2, unit: 'degrees' },
  unsure: usualShare('throw', (cam, by) => ({ ...cam, eccentricity: cam.eccentricity * by }), 0.15),
  reversed: (cam) => ({ ...cam, direction: scale(cam.direction, -1) }),
  live: true,
  effort: 6,
};
