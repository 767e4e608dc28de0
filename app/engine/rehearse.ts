/**
 * A plan that nobody asked for, made in the worker while a reading is typed: a browser compiles what runs often, so that
 * the first plan that somebody waits for comes as fast as any later one.
 */

import { sidesOf } from '../../core/adjuster/of-corner.ts';
import { type Car, type CarFile, CORNERS, type LiveAngle, type Reading, type Spec } from '../../core/contract.ts';
import { axleOf, isLeft } from '../../core/corners.ts';
import { planOfFile } from '../../core/index.ts';
import { specTerms } from '../../core/reading/spec-terms.ts';

/**
 * @param off how far off its aims the car is taken to be, half windows
 * @param live what the rack shows while something is turned
 * @returns how many moves the plan has
 * @throws InputError where this car cannot be planned
 */
export function rehearse(car: Car, spec: Spec, off: number, live: readonly LiveAngle[] = []): number {
  const rounds = [{ reading: readingOf(car, spec, off), settings: {} }];
  const visit = { id: 'rehearsal', carId: car.id, opened: '2026-01-01T00:00:00Z', rounds };
  const file: CarFile = { format: 'cornerwright', version: 1, car, spec, visits: [visit] };
  return planOfFile(file, { style: 'practical', ...(live.length > 0 && { live }) }).moves.length;
}

/** Every wheel as its suspension has it, and where it has a window so far off its aim. */
function readingOf(car: Car, spec: Spec, off: number): Reading {
  const terms = specTerms(spec);
  return Object.fromEntries(
    CORNERS.map((corner) => {
      const { camber, toe } = sidesOf(car[axleOf(corner)])[isLeft(corner) ? 0 : 1].suspension;
      const own = terms.filter(({ where }) => where === corner);
      const angles = own.map(({ angle, window: { aim, half } }) => [angle, aim + off * half] as const);
      return [corner, { camber, toe, ...Object.fromEntries(angles) }];
    }),
  );
}
