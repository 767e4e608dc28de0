/**
 * A strut from a tape measure: points that reproduce every given dimension and the measured caster, SAI, camber and
 * toe exactly.
 *
 * Construction, in the corner frame (x forward, y outboard, z up):
 * 1. wheelCentre and lowerBall as for a double wishbone.
 * 2. strutLower, where the strut's line meets its clamp on the knuckle: at its height, `strutLowerInset` inboard and
 *    `strutLowerAhead` ahead of the lower ball joint.
 * 3. strutTop on the steering axis through lowerBall, k ∝ (−tan caster, −tan SAI, 1), and `strutLength` from
 *    strutLower: the upper of the two places where that line meets the sphere. Both projected angles and the length
 *    come out exactly; the height of the top follows.
 * 4. The arm and the tie rod: tape-parts.ts.
 */
import type { Vec3 } from '../../contract.ts';
import { add, dot, norm, scale, sub } from '../../geometry/vector.ts';
import { InputError } from '../../input-error.ts';
import * as shared from './dimensions.ts';
import * as part from './parts.ts';
import { type Dimensions, deg, mm, type TapeDimension, type TapeLayout } from './tape.ts';

const DIMENSIONS: readonly TapeDimension[] = [
  ...shared.measuredAngles('strutTop'),
  deg('sai', {
    label: 'SAI',
    between: ['lowerBall', 'strutTop'],
    limit: 30,
    otherwise: 13,
    why: 'most struts have 11 to 15°',
  }),
  mm('strutLength', {
    label: 'Strut, clamp to top mount',
    between: ['strutLower', 'strutTop'],
    low: 100,
    high: 1500,
    otherwise: 420,
    tolerance: 60,
    why: 'a middling strut, from the clamp to the top mount',
  }),
  ...shared.LOWER_ARM_LENGTHS,
  ...shared.WHEEL_HEIGHTS,
  mm('strutLowerHeight', {
    label: 'Strut at its clamp, height',
    between: ['strutLower'],
    low: 100,
    high: 1200,
    otherwise: 420,
    tolerance: 40,
    why: 'a clamp about {110 mm} above the wheel centre',
  }),
  ...shared.LOWER_ARM_HEIGHTS,
  ...shared.STANCE,
  mm('strutLowerInset', {
    label: 'Strut at its clamp, inboard of the lower ball joint',
    between: ['strutLower', 'lowerBall'],
    measure: 'inboard',
    low: -200,
    high: 400,
    otherwise: 80,
    tolerance: 30,
    why: 'a strut that stands inboard of the lower ball joint',
  }),
  mm('strutLowerAhead', {
    label: 'Strut at its clamp, ahead of the lower ball joint',
    between: ['strutLower', 'lowerBall'],
    measure: 'ahead',
    low: -400,
    high: 400,
    otherwise: 'axisAheadAtClamp',
    tolerance: 20,
    why: 'in side view the strut lies on the steering axis',
  }),
  ...shared.STEERING,
  shared.skewOf('lower'),
  ...shared.STEERING_ANGLES,
];

export const strutTape: TapeLayout = {
  kind: 'strut',
  dimensions: DIMENSIONS,
  build: (from) => {
    const { wheelCentre, lowerBall, axis } = part.stance(from);
    const { strutLower, strutTop } = strutLine(from, lowerBall, axis);
    const [lowerFront, lowerRear] = part.arm('lower', lowerBall, from);
    const { tieInner, tieOuter } = part.tieRod(from, lowerBall);
    return { strutTop, strutLower, lowerFront, lowerRear, lowerBall, tieInner, tieOuter, wheelCentre };
  },
};

function strutLine(
  { take, follows, field }: Dimensions,
  ball: Vec3,
  axis: Vec3,
): Record<'strutLower' | 'strutTop', Vec3> {
  const height = take('strutLowerHeight');
  follows('axisAheadAtClamp', ((height - ball[2]) * axis[0]) / axis[2]);
  const strutLower: Vec3 = [ball[0] + take('strutLowerAhead'), ball[1] - take('strutLowerInset'), height];
  const arm = sub(strutLower, ball);
  const along = dot(arm, axis);
  const off = norm(sub(arm, scale(axis, along)));
  const length = take('strutLength');
  const rest = length * length - off * off;
  const strutTop = add(ball, scale(axis, along + Math.sqrt(Math.max(0, rest))));
  // Shorter, and the strut misses the steering axis or hangs from it.
  if (!(rest > 0 && strutTop[2] > height)) {
    throw new InputError(`${field}.strutLength`, length, { is: 'strut-length', above: off });
  }
  return { strutLower, strutTop };
}
