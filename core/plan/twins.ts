/** Left and right of an axle are mostly mirror images: what they share is worked out once. */
import type { Corner } from '../contract.ts';
import type { Unit } from './car-model.ts';
import { type Stand, UnitStates } from './states.ts';

/** States of every unit; one that is built and stands as one before it, but for its reading, takes over that one's. */
export function statesOf(units: readonly Unit[], standOf: (corner: Corner) => Stand): UnitStates[] {
  const known = new Map<string, UnitStates>();
  return units.map((unit) => {
    const stands = unit.corners.map(standOf);
    const key = JSON.stringify([unit.sides, stands.map(({ current, movable, ties }) => [current, movable, ties])]);
    const states = new UnitStates(unit, stands, known.get(key));
    known.set(key, states);
    return states;
  });
}
