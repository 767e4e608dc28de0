/** Puts the made-up car into an empty profile. */

import type { Car, Spec } from '../../core/contract.ts';
import file from '../../fixtures/cars/practice.json';
import { keep } from '../state/records.ts';
import { now } from '../store/index.ts';

export function installPracticeCar(): void {
  const { car, spec } = file as unknown as { car: Car; spec: Spec };
  keep(['cars', { id: car.id, car, spec, changed: now(), practice: true }]);
}
