/** What the rack will read after adjusters have moved. */

import { validateCarSettings } from '../check/adjusters.ts';
import { validateCar, validateReading } from '../check/car.ts';
import {
  ANGLES,
  type Car,
  type CarSettings,
  type Corner,
  type CornerPose,
  type Reading,
  type WheelReading,
} from '../contract.ts';
import { axleOf } from '../corners.ts';
import { type CarModel, compileCar } from '../pose/car-model.ts';

/** Degrees that the rear thrust angle grows by as the rear wheels' toe grows by these. */
export const thrustChange = (left: number, right: number): number => (left - right) / 2;

/**
 * The reading after the adjusters go from one set of positions to another: measured + (model at `to` − model at
 * `from`), assembly by assembly. Against the thrust line, front toe also moves with the rear wheels.
 * Takes validated input.
 */
export function predictWith(model: CarModel, reading: Reading, from: CarSettings, to: CarSettings): Reading {
  const wheels: Partial<Record<Corner, WheelReading>> = {};
  const unreachable: { corner: Corner; message: string }[] = [];
  const toeChange: Partial<Record<Corner, number>> = {};
  const thrustLine = reading.toeReference === 'thrust-line';
  for (const assembly of model) {
    const { corners } = assembly;
    const asked = corners.some((corner) => reading[corner] || (thrustLine && axleOf(corner) === 'rear'));
    if (!asked) continue;
    const before = assembly.model.pose(corners.map((corner) => from[corner] ?? {}));
    // Most calls ask about one move: what stands still need not be solved twice.
    const still = corners.every((corner) => from[corner] === to[corner]);
    const after = still ? before : assembly.model.pose(corners.map((corner) => to[corner] ?? {}));
    corners.forEach((corner, i) => {
      const measured = reading[corner];
      if (before.reachable && after.reachable) {
        const [was, is] = [before.corners[i] as CornerPose, after.corners[i] as CornerPose];
        toeChange[corner] = is.toe - was.toe;
        if (measured) wheels[corner] = shifted(measured, was, is);
      } else {
        const failed = before.reachable ? after : before;
        unreachable.push({ corner, message: `${corner}: ${failed.reachable ? '' : failed.message}` });
      }
    });
  }
  if (thrustLine) {
    const thrust = thrustChange(toeChange.LR ?? 0, toeChange.RR ?? 0);
    for (const [corner, sign] of [
      ['LF', -1],
      ['RF', 1],
    ] as const) {
      const wheel = wheels[corner];
      if (wheel?.toe !== undefined) wheels[corner] = { ...wheel, toe: wheel.toe + sign * thrust };
    }
  }
  const reference = reading.toeReference ? { toeReference: reading.toeReference } : {};
  return { ...wheels, ...reference, ...(unreachable.length > 0 ? { unreachable } : {}) };
}

/**
 * The reading after the adjusters go from one set of positions to another: measured + (model at `to` − model at
 * `from`), per corner, degrees. Angles that were not measured stay absent; a corner where no pose exists has no angles
 * and is named in `unreachable`.
 * @param from where the adjusters stood when the reading was taken; one that is absent stands at its reference
 * @param to where they go; one that is absent goes to its reference
 * @throws InputError naming the field, the value and what is allowed
 */
export function predictReading(car: Car, reading: Reading, from: CarSettings, to: CarSettings): Reading {
  const checked = validateCar(car);
  return predictWith(
    compileCar(checked),
    validateReading(reading),
    validateCarSettings(from, checked, 'from'),
    validateCarSettings(to, checked, 'to'),
  );
}

/** Each measured angle moved on by what the model says; what was not measured stays absent. */
function shifted(measured: WheelReading, before: CornerPose, after: CornerPose): WheelReading {
  const moved: { -readonly [A in keyof WheelReading]: number } = {};
  for (const angle of ANGLES) {
    const value = measured[angle];
    if (value === undefined) continue;
    moved[angle] = value + (after[angle] ?? 0) - (before[angle] ?? 0);
  }
  return moved;
}
