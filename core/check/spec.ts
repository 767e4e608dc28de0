/** What a reading and a spec have to be. */
import {
  AXLE_ANGLES,
  AXLE_CHANGES,
  type AxleSpec,
  type Reading,
  type Spec,
  WHEEL_ANGLES,
  type Window,
} from '../contract.ts';
import { InputError } from '../input-error.ts';
import { each } from './gather.ts';
import { check } from './refuse.ts';
import * as schema from './schema.ts';

/** @throws InputError naming, for instance, `reading.LF.camber` */
export const validateReading = (value: unknown, field = 'reading'): Reading => check(schema.reading, value, field);

/** @throws InputError naming, for instance, `spec.front.left.camber.low` */
export function validateSpec(value: unknown, field = 'spec'): Spec {
  const spec = check(schema.spec, value, field);
  each(
    (['front', 'rear'] as const).flatMap((axle) => {
      const { left = {}, right = {}, ...own } = spec[axle] ?? {};
      return [
        ...windowsIn(own, `${field}.${axle}`),
        ...windowsIn(left, `${field}.${axle}.left`),
        ...windowsIn(right, `${field}.${axle}.right`),
      ];
    }),
  );
  return spec;
}

/** A check of each window there is, those of the axle first. */
function windowsIn(windows: Omit<AxleSpec, 'left' | 'right'>, field: string): (() => void)[] {
  return [...AXLE_ANGLES, ...AXLE_CHANGES, ...WHEEL_ANGLES].flatMap((angle) => {
    const window = windows[angle];
    const unit = angle === 'lateralChange' ? 'mm' : 'degrees';
    return window ? [() => checkWindow(window, `${field}.${angle}`, unit)] : [];
  });
}

/** A window has its lower limit below its upper one, and its aim between them. */
function checkWindow({ low, aim, high }: Window, field: string, unit: 'mm' | 'degrees'): void {
  if (low >= high) throw new InputError(`${field}.low`, low, { is: 'below-high', high, unit });
  if (aim !== undefined && !(aim >= low && aim <= high)) {
    throw new InputError(`${field}.aim`, aim, { is: 'in-window', low, high, unit });
  }
}
