/**
 * What the driver feels of a wheel, from its poses as a library finds them that knows nothing of suspensions, and from
 * trigonometry; none of the core's code.
 */
import type { Suspension, Vec3 } from '../../core/contract.ts';
import { type Disturbance, type GeneralPose, generalPose } from './general-pose.ts';

/** As the core names them; what needs a steering axis is absent where there is none. */
export interface GeneralEffects {
  readonly bumpSteer: readonly [number, number];
  readonly camberGain: readonly [number, number];
  readonly sai?: number;
  readonly scrubRadius?: number;
  readonly casterTrail?: number;
  readonly toeOutOnTurns?: number;
}

/** mm of bump and of droop, and degrees of the inner wheel, for which side effects are told. */
const [TRAVEL, TURN] = [25, 20];
const tan = (degrees: number): number => Math.tan((degrees * Math.PI) / 180);
const sin = (degrees: number): number => Math.sin((degrees * Math.PI) / 180);
const cos = (degrees: number): number => Math.cos((degrees * Math.PI) / 180);

function settled(suspension: Suspension, disturbance: Disturbance): GeneralPose {
  const pose = generalPose(suspension, disturbance);
  if (!(pose.residual < 1e-7)) throw new Error('the library did not converge');
  return pose;
}

/** Degrees that the angles gain from one disturbance to another. */
export function generalGain(suspension: Suspension, from: Disturbance, to: Disturbance) {
  const [before, after] = [settled(suspension, from), settled(suspension, to)];
  const gain = (angle: 'camber' | 'caster' | 'toe') => (after[angle] ?? Number.NaN) - (before[angle] ?? Number.NaN);
  return { camber: gain('camber'), caster: gain('caster'), toe: gain('toe') };
}

export function generalEffects(suspension: Suspension, by: Disturbance = {}): GeneralEffects {
  const [bump, droop] = [TRAVEL, -TRAVEL].map((travel) => generalGain(suspension, by, { ...by, travel })) as [
    ReturnType<typeof generalGain>,
    ReturnType<typeof generalGain>,
  ];
  const still = settled(suspension, by);
  return {
    bumpSteer: [bump.toe, droop.toe],
    camberGain: [bump.camber, droop.camber],
    ...(still.caster === undefined ? {} : { ...atGround(still), toeOutOnTurns: toeOutOnTurns(suspension, by) }),
  };
}

function atGround({ camber, toe, caster = Number.NaN, sai = Number.NaN, place }: GeneralPose) {
  const [centre, lower] = [place('wheelCentre'), place('lowerBall')];
  // From under the wheel centre to where the axis meets the ground; a wheel that leans out stands further in.
  const x = lower[0] + lower[2] * tan(caster) - centre[0];
  const y = lower[1] + lower[2] * tan(sai) - centre[1];
  return {
    sai,
    casterTrail: x * cos(toe) - y * sin(toe),
    scrubRadius: -x * sin(toe) - y * cos(toe) - centre[2] * tan(camber),
  };
}

/** The rack that turns the inner wheel is found by halving; it pulls at the outer one as far as it pushes. */
function toeOutOnTurns(suspension: Suspension, by: Disturbance): number {
  const [x, y, z] = by.moved?.tieInner ?? (suspension.points.tieInner as Vec3);
  const turned = (rack: number) =>
    generalGain(suspension, by, { ...by, moved: { ...by.moved, tieInner: [x, y + rack, z] } }).toe;
  let [low, high] = turned(20) < turned(-20) ? [0, 120] : [0, -120];
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (turned(middle) > -TURN) low = middle;
    else high = middle;
  }
  return TURN - turned(-low);
}
