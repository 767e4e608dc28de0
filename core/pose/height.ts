/**
 * What the rack shows once the body stands higher or lower at one end or both: the wheels go down against the body, and
 * the body pitches over them, so that every axis that is fixed in it leans with it. The wheels stand on level ground.
 */
import type { Car, CarSettings, Corner, CornerPose, Vec3 } from '../contract.ts';
import { axleOf } from '../corners.ts';
import { atan2, cos, degrees, type Radians, sin } from '../geometry/angle.ts';
import { camberOf, casterOf, saiOf, spinAxis, steeringAxis, toeOf } from '../geometry/wheel-angles.ts';
import { type Assembly, compileCar } from './car-model.ts';
import { type AngleGain, gained } from './effects.ts';
import type { CornerModel } from './mechanism.ts';
import { hasBody } from './numbers.ts';

/** Of a middling car, mm, where nobody typed one. From memory, no source. */
export const USUAL_WHEELBASE = 2600;

/** Degrees that a wheel's angles gain, of those that the geometry knows. */
export interface HeightGain extends AngleGain {
  readonly sai?: number;
}

/** mm that the body goes up over the wheels of each end; an end that is absent stays. */
export interface Raise {
  readonly front?: number;
  readonly rear?: number;
}

/** What the rack shows that the car has gained by another height. */
export interface HeightEffect {
  /** Degrees that the body has pitched; + its nose is up. */
  readonly pitch: number;
  /** mm, and whether it is the usual one as the car gives none. */
  readonly wheelbase: number;
  readonly usualWheelbase: boolean;
  /** Absent: without geometry, or where the links cannot go that far. */
  readonly corners: Readonly<Partial<Record<Corner, HeightGain>>>;
  /** Degrees that a rigid axle on links has pitched as an inclinometer on it shows; + its nose is up. */
  readonly pinionAngle?: number;
}

/** What a wheel's angles gain as its corner of the body is raised by so much, mm, the body staying level. */
export function heightEffectOf(model: CornerModel, settings: CarSettings[Corner], raise: number) {
  const before = model.pose(settings ?? {});
  const after = model.pose(settings ?? {}, { travel: -raise });
  return before.reachable && after.reachable ? gained(before, after) : undefined;
}

/** The whole car, validated, by its own poses and one rotation of the body. */
export function heightOf(car: Car, settings: CarSettings, { front = 0, rear = 0 }: Raise): HeightEffect {
  const wheelbase = car.wheelbase ?? USUAL_WHEELBASE;
  const pitch = atan2(front - rear, wheelbase);
  const found = compileCar(car).map((one) =>
    ofAssembly(one, settings, axleOf(one.corners[0]!) === 'front' ? front : rear, pitch),
  );
  const pinion = found.find(({ pinionAngle }) => pinionAngle !== undefined);
  return {
    pitch: degrees(pitch),
    wheelbase,
    usualWheelbase: car.wheelbase === undefined,
    corners: Object.assign({}, ...found.map(({ corners }) => corners)),
    ...(pinion && { pinionAngle: pinion.pinionAngle }),
  };
}

function ofAssembly({ corners, sides, model }: Assembly, settings: CarSettings, raise: number, pitch: Radians) {
  if (model.linkage.kind.points.length === 0) return { corners: {} };
  const stands = corners.map((corner) => settings[corner] ?? {});
  const before = model.pose(stands);
  const after = model.pose(
    stands,
    corners.map(() => ({ travel: model.linkage.kind.height || model.linkage.crossRod ? -raise : 0 })),
  );
  if (!before.reachable || !after.reachable) return { corners: {} };
  const gains = corners.map((corner, i) => [
    corner,
    gainedWithSai(before.corners[i]!, pitched(after.corners[i]!, pitch)),
  ]);
  const pinionAngle = after.body.pitch - before.body.pitch + degrees(pitch);
  return { corners: Object.fromEntries(gains), ...(hasBody(sides) && { pinionAngle }) };
}

/** A wheel as level ground sees it, once the body that it was solved in has pitched, nose up. */
function pitched(pose: CornerPose, by: Radians): CornerPose {
  const nose = ([x, y, z]: Vec3): Vec3 => [x * cos(by) - z * sin(by), y, x * sin(by) + z * cos(by)];
  const spin = nose(spinAxis(pose.camber, pose.toe));
  const turned = { ...pose, camber: camberOf(spin), toe: toeOf(spin) };
  if (pose.caster === undefined || pose.sai === undefined) return turned;
  const axis = nose(steeringAxis(pose.caster, pose.sai));
  return { ...turned, caster: casterOf(axis), sai: saiOf(axis) };
}

function gainedWithSai(before: CornerPose, after: CornerPose): HeightGain {
  const sai = before.sai === undefined || after.sai === undefined ? {} : { sai: after.sai - before.sai };
  return { ...gained(before, after), ...sai };
}
