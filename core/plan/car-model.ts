/** A car compiled for solving: one corner model for each corner. */
import type { Adjuster, Axle, AxleName, Car, Corner, Suspension } from '../contract.ts';
import { CornerModel } from '../pose/corner.ts';

export const axleOf = (corner: Corner): AxleName => (corner.endsWith('F') ? 'front' : 'rear');
export const isLeft = (corner: Corner): boolean => corner.startsWith('L');

/** The adjusters that a corner has: its axle's. */
export const adjustersOf = (car: Car, corner: Corner): readonly Adjuster[] => car[axleOf(corner)].adjusters;

export function suspensionOf(axle: Axle, corner: Corner): Suspension {
  return isLeft(corner) ? axle.suspension : (axle.rightSuspension ?? axle.suspension);
}

/** The corner models of a car; each is compiled when it is first asked for. */
export type CarModel = (corner: Corner) => CornerModel;

/** Compiles a validated car. */
export function compileCar(car: Car): CarModel {
  const compiled = new Map<Corner, CornerModel>();
  return (corner) => {
    let model = compiled.get(corner);
    if (!model) {
      const name = axleOf(corner);
      const axle = car[name];
      const side = !isLeft(corner) && axle.rightSuspension ? 'rightSuspension' : 'suspension';
      model = new CornerModel(suspensionOf(axle, corner), axle.adjusters, `${name}.${side}`);
      compiled.set(corner, model);
    }
    return model;
  };
}
