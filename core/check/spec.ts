/** What a reading and a spec have to be. */
import {
  AXLE_ANGLES,
  AXLE_CHANGES,
  type Reading,
  type Spec,
  WHEEL_ANGLES,
  type WheelSpec,
  type Window,
} from '../contract.ts';
import { InputError } from '../input-error.ts';
import { check } from './refuse.ts';
import * as schema from './schema.ts';

/** @throws InputError naming, for instance, `reading.LF.camber` */
export const validateReading = (value: unknown, field = 'reading'): Reading => check(schema.reading, value, field);

/** @throws InputError naming, for instance, `spec.front.left.camber.low` */
export function validateSpec(value: unknown, field = 'spec'): Spec {
  const spec = check(schema.spec, value, field);
  for (const axle of ['front', 'rear'] as const) {
    const own = spec[axle];
    if (!own) continue;
    for (const angle of [...AXLE_ANGLES, ...AXLE_CHANGES]) {
      if (own[angle]) checkWindow(own[angle], `${field}.${axle}.${angle}`);
    }
    checkWheel(own, `${field}.${axle}`);
    for (const side of ['left', 'right'] as const) checkWheel(own[side] ?? {}, `${field}.${axle}.${side}`);
  }
  return spec;
}

function checkWheel(windows: WheelSpec, field: string): void {
  for (const angle of WHEEL_ANGLES) if (windows[angle]) checkWindow(windows[angle], `${field}.${angle}`);
}

/** A window has its lower limit below its upper one, and its aim between them. */
function checkWindow({ low, aim, high }: Window, field: string): void {
  if (low >= high) throw new InputError(`${field}.low`, low, { is: 'below-high', high });
  if (aim !== undefined && !(aim >= low && aim <= high)) {
    throw new InputError(`${field}.aim`, aim, { is: 'in-window', low, high });
  }
}
