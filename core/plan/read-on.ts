/**
 * What the rack reads after moves that were made: what the model says of them, and where one was turned until the rack showed a
 * value, that value and what else was seen then. From there on a wheel goes by the model again.
 */
import type { CarSettings, Corner, LiveAngle, Moved, Reading, WheelReading } from '../contract.ts';
import { CORNERS, WHEEL_ANGLES } from '../contract.ts';
import type { CarModel } from '../pose/car-model.ts';
import { current, movedOn } from '../records/rounds.ts';
import { predictWith } from './predict.ts';

/** Degrees that a wheel was seen to read beyond what the model says. */
type Beyond = Readonly<Partial<Record<Corner, WheelReading>>>;

/** What was seen of each wheel when it was last set by the rack, beyond what the model says. @param reading with the steering wheel level */
export function seenBeyond(model: CarModel, reading: Reading, from: CarSettings, moves: readonly Moved[]): Beyond {
  const beyond: Partial<Record<Corner, WheelReading>> = {};
  const made: Moved[] = [];
  for (const move of current(moves)) {
    made.push(move);
    const { corner, setBy } = move;
    if (!setBy || move.outcome === 'wont-move') continue;
    const told = predictWith(model, reading, from, movedOn(from, made))[corner] ?? {};
    const seen: WheelReading = { [setBy.angle]: setBy.value, ...setBy.shown };
    beyond[corner] = { ...beyond[corner], ...difference(seen, told) };
  }
  return beyond;
}

/** A reading with each angle further by so much, where it was read. */
export function further(reading: Reading, beyond: Beyond): Reading {
  const wheels = CORNERS.flatMap((corner) => {
    const read = reading[corner];
    return read && beyond[corner] ? [[corner, sum(read, beyond[corner])] as const] : [];
  });
  return { ...reading, ...Object.fromEntries(wheels) };
}

const sum = (read: WheelReading, by: WheelReading): WheelReading => ({ ...read, ...each(read, by, (a, b) => a + b) });
const difference = (a: WheelReading, b: WheelReading): WheelReading => each(a, b, (x, y) => x - y);

function each(a: WheelReading, b: WheelReading, of: (a: number, b: number) => number): WheelReading {
  const both = WHEEL_ANGLES.filter((angle: LiveAngle) => a[angle] !== undefined && b[angle] !== undefined);
  return Object.fromEntries(both.map((angle) => [angle, of(a[angle]!, b[angle]!)]));
}
