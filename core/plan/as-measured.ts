/**
 * The car as the rack found it: the hard points as they were entered, the wheels as they were read. Where a move pitches
 * or rolls an upright, what that does to camber and toe hangs on how the wheel leans in it now, so that a model whose
 * wheels stand as when the points were taken is off by the product of the two.
 */

import type {
  Axle,
  AxleName,
  Car,
  CarSettings,
  Corner,
  Reading,
  Settings,
  Suspension,
  WheelReading,
} from '../contract.ts';
import { AXLES, isLeft } from '../corners.ts';
import { type Assembly, compileCar } from '../pose/car-model.ts';
import { leanAt, leansOf } from '../pose/lean.ts';
import { ANGLES_A_WHEEL, CAMBER, TOE } from '../pose/numbers.ts';
import { thrustOf } from '../reading/axle-angles.ts';
import { suspensionKinds } from '../suspension/catalogue.ts';
import { predictWith } from './predict.ts';

/** Degrees by which a wheel may be found off what was entered; beyond it the entry is no start. */
const MOST = 20;

/**
 * The car with each measured wheel's camber and toe set so that its model, with the adjusters at `settings`, shows what
 * was read. Points stay as they are; a wheel that was not measured, or has no pose there, stays as entered.
 * @param car, reading, settings validated
 */
export function asMeasured(car: Car, reading: Reading, settings: CarSettings): Car {
  const thrust = reading.toeReference === 'thrust-line' ? thrustOf(reading.LR?.toe ?? 0, reading.RR?.toe ?? 0) : 0;
  const read = (corner: Corner): WheelReading => {
    const wheel = reading[corner] ?? {};
    // Front toe against the thrust line, against the centre line.
    const shift = corner === 'LF' ? thrust : corner === 'RF' ? -thrust : 0;
    return wheel.toe === undefined ? wheel : { ...wheel, toe: wheel.toe + shift };
  };
  return (['front', 'rear'] as const).reduce((now, name) => matched(now, name, read, settings), car);
}

/** What the rack should read after moves, with the wheels as they were read. Takes validated input. */
export const expected = (car: Car, reading: Reading, from: CarSettings, to: CarSettings): Reading =>
  predictWith(compileCar(asMeasured(car, reading, from)), reading, from, to);

function matched(car: Car, name: AxleName, read: (corner: Corner) => WheelReading, settings: CarSettings): Car {
  const corners = AXLES[name];
  if (corners.every((corner) => Object.keys(read(corner)).length === 0)) return car;
  if (suspensionKinds[car[name].suspension.kind]?.points.length === 0) return car;
  let axle = car[name];
  for (const assembly of compileCar(car).filter((one) => one.corners.some((corner) => corners.includes(corner)))) {
    const leans = leansAt(assembly, read, settings);
    if (!leans) return car;
    for (const [i, corner] of assembly.corners.entries()) axle = turned(axle, corner, leans[i]!);
  }
  return { ...car, [name]: axle };
}

/** How each wheel of an assembly leans beside what was entered; nothing where it has no pose, or is found too far off. */
function leansAt({ corners, model }: Assembly, read: (corner: Corner) => WheelReading, settings: CarSettings) {
  const values = new Float64Array(model.numbers).fill(Number.NaN);
  for (const [i, corner] of corners.entries()) {
    const { camber, toe } = read(corner);
    if (camber !== undefined) values[ANGLES_A_WHEEL * i + CAMBER] = camber;
    if (toe !== undefined) values[ANGLES_A_WHEEL * i + TOE] = toe;
  }
  const leans = leansOf(model, values);
  const params = model.parameters(corners.map((corner): Settings => settings[corner] ?? {}));
  const by = leanAt(model, params, leans, values);
  if (!by?.every((degrees) => Math.abs(degrees) < MOST)) return undefined;
  const of = (i: number, angle: number): number =>
    by[leans.findIndex(({ number }) => number === ANGLES_A_WHEEL * i + angle)] ?? 0;
  return corners.map((_, i) => ({ camber: of(i, CAMBER), toe: of(i, TOE) }));
}

function turned(axle: Axle, corner: Corner, by: { readonly camber: number; readonly toe: number }): Axle {
  const lean = (one: Suspension): Suspension => ({ ...one, camber: one.camber + by.camber, toe: one.toe + by.toe });
  const right = axle.rightSuspension ?? mirroredSuspension(axle.suspension);
  if (isLeft(corner)) return { ...axle, suspension: lean(axle.suspension), rightSuspension: right };
  return { ...axle, rightSuspension: lean(right) };
}

/** The right side of an axle that gave none: what a rigid axle has once stands with the left. */
function mirroredSuspension(left: Suspension): Suspension {
  const once = suspensionKinds[left.kind]?.rigidAxle?.once ?? [];
  const points = Object.entries(left.points).filter(([name]) => !once.includes(name));
  return { ...left, points: Object.fromEntries(points) };
}
