/** A car compiled for solving: one model for each assembly, the corners that are solved together. */

import { type Side, sidesOf } from '../adjuster/of-corner.ts';
import type { Car, Corner, Settings } from '../contract.ts';
import { AXLES } from '../corners.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { type CornerModel, Mechanism } from './mechanism.ts';

/** One corner, or the left and the right one of a rigid axle. */
export interface Assembly {
  readonly corners: readonly Corner[];
  readonly sides: readonly Side[];
  /** Compiled when it is first asked for. */
  readonly model: Mechanism;
}

/** The assemblies of a car, front to rear, left to right. */
export type CarModel = readonly Assembly[];

/** Compiles a validated car. */
export function compileCar(car: Car): CarModel {
  return (['front', 'rear'] as const).flatMap((name) => {
    const [left, right] = sidesOf(car[name]);
    const field = `${name}.suspension`;
    if (suspensionKinds[left.suspension.kind]?.rigidAxle) return [assembly(AXLES[name], [left, right], field)];
    const rightField = car[name].rightSuspension ? `${name}.rightSuspension` : field;
    return [assembly([AXLES[name][0]], [left], field), assembly([AXLES[name][1]], [right], rightField)];
  });
}

function assembly(corners: readonly Corner[], sides: readonly Side[], field: string): Assembly {
  let compiled: Mechanism | undefined;
  return {
    corners,
    sides,
    get model() {
      compiled ??= new Mechanism(sides, field);
      return compiled;
    },
  };
}

/** One corner, the rest of its assembly standing at `others`. */
export function cornerOf(car: CarModel, corner: Corner, others: Readonly<Record<Corner, Settings>>): CornerModel {
  const { corners, model } = car.find((one) => one.corners.includes(corner))!;
  return model.corner(
    corners.indexOf(corner),
    corners.map((one) => others[one]),
  );
}
