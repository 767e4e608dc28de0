/** A car compiled for solving: one model for each unit, the corners that are solved together. */
import type { Car, Corner, Settings } from '../contract.ts';
import { AXLES } from '../reading/axle-angles.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { type CornerModel, type Side, sidesOf, UnitModel } from './mechanism.ts';

/** One corner, or the left and the right one of a rigid axle. */
export interface Unit {
  readonly corners: readonly Corner[];
  readonly sides: readonly Side[];
  /** Compiled when it is first asked for. */
  readonly model: UnitModel;
}

/** The units of a car, front to rear, left to right. */
export type CarModel = readonly Unit[];

/** Compiles a validated car. */
export function compileCar(car: Car): CarModel {
  return (['front', 'rear'] as const).flatMap((name) => {
    const [left, right] = sidesOf(car[name]);
    const field = `${name}.suspension`;
    if (suspensionKinds[left.suspension.kind]?.rigidAxle) return [unit(AXLES[name], [left, right], field)];
    const rightField = car[name].rightSuspension ? `${name}.rightSuspension` : field;
    return [unit([AXLES[name][0]], [left], field), unit([AXLES[name][1]], [right], rightField)];
  });
}

function unit(corners: readonly Corner[], sides: readonly Side[], field: string): Unit {
  let compiled: UnitModel | undefined;
  return {
    corners,
    sides,
    get model() {
      compiled ??= new UnitModel(sides, field);
      return compiled;
    },
  };
}

/** One corner, the rest of its unit standing at `others`. */
export function cornerOf(car: CarModel, corner: Corner, others: Readonly<Record<Corner, Settings>>): CornerModel {
  const { corners, model } = car.find((one) => one.corners.includes(corner)) as Unit;
  return model.corner(
    corners.indexOf(corner),
    corners.map((one) => others[one]),
  );
}
