/** What the rack will read after adjusters have moved. */

import {
  ANGLES,
  type AxleName,
  type AxleReading,
  type CarSettings,
  type Corner,
  type CornerPose,
  type NoPose,
  type Reading,
  type WheelReading,
} from '../contract.ts';
import { axleOf } from '../corners.ts';
import type { CarModel } from '../pose/car-model.ts';
import type { BodyPose } from '../pose/mechanism.ts';
import { hasBody } from '../pose/numbers.ts';
import { thrustOf } from '../reading/axle-angles.ts';
import type { StandsAt } from '../said.ts';

/**
 * The reading after the adjusters go from one set of positions to another: measured + (model at `to` − model at
 * `from`), assembly by assembly. Against the thrust line, front toe also moves with the rear wheels. Of an axle on links
 * it also says how far it has pitched and gone sideways.
 * Takes validated input.
 */
export function predictWith(model: CarModel, reading: Reading, from: CarSettings, to: CarSettings): Reading {
  const wheels: Partial<Record<Corner, WheelReading>> = {};
  const unreachable: { corner: Corner; at: readonly StandsAt[] }[] = [];
  const axles: Partial<Record<AxleName, AxleReading>> = {};
  const toeChange: Partial<Record<Corner, number>> = {};
  const thrustLine = reading.toeReference === 'thrust-line';
  for (const assembly of model) {
    const { corners } = assembly;
    const asked = corners.some(
      (corner) => reading[corner] || reading[axleOf(corner)] || (thrustLine && axleOf(corner) === 'rear'),
    );
    if (!asked) continue;
    const before = assembly.model.pose(corners.map((corner) => from[corner] ?? {}));
    // Most calls ask about one move: what stands still need not be solved twice.
    const still = corners.every((corner) => from[corner] === to[corner]);
    const after = still ? before : assembly.model.pose(corners.map((corner) => to[corner] ?? {}));
    if (hasBody(assembly.sides) && before.reachable && after.reachable) {
      const name = axleOf(corners[0]!);
      const own = goneFrom(reading[name], before.body, after.body);
      if (own) axles[name] = own;
    }
    corners.forEach((corner, i) => {
      const measured = reading[corner];
      if (before.reachable && after.reachable) {
        const [was, is] = [before.corners[i]!, after.corners[i]!];
        toeChange[corner] = is.toe - was.toe;
        if (measured) wheels[corner] = shifted(measured, was, is);
      } else {
        const failed = (before.reachable ? after : before) as NoPose;
        unreachable.push({ corner, at: failed.at });
      }
    });
  }
  if (thrustLine) {
    const thrust = thrustOf(toeChange.LR ?? 0, toeChange.RR ?? 0);
    for (const [corner, sign] of [
      ['LF', -1],
      ['RF', 1],
    ] as const) {
      const wheel = wheels[corner];
      if (wheel?.toe !== undefined) wheels[corner] = { ...wheel, toe: wheel.toe + sign * thrust };
    }
  }
  const { toeReference, steeringWheel } = reading;
  const asRead = { ...(toeReference && { toeReference }), ...(steeringWheel !== undefined && { steeringWheel }) };
  return { ...wheels, ...axles, ...asRead, ...(unreachable.length > 0 ? { unreachable } : {}) };
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

/** What was read where nothing has moved. What was measured goes on by what the axle has gone. */
function goneFrom(read: AxleReading | undefined, before: BodyPose, after: BodyPose): AxleReading | undefined {
  const pitched = after.pitch - before.pitch;
  const aside = after.lateral - before.lateral;
  if (pitched === 0 && aside === 0) return read;
  const { pinionAngle, lateral, pinionChange = 0, lateralChange = 0 } = read ?? {};
  return {
    ...(pinionAngle !== undefined && { pinionAngle: pinionAngle + pitched }),
    ...(lateral !== undefined && { lateral: lateral + aside }),
    pinionChange: pinionChange + pitched,
    lateralChange: lateralChange + aside,
  };
}
