/** Puts the made-up car into an empty profile. */

import type { Car, Spec } from '../../core/contract.ts';
import file from '../../fixtures/cars/practice.json';
import { keep } from '../state/records.ts';

/** Its first edit is newer on every phone, and until then all phones have the same. */
const FIRST = '2025-01-01T00:00:00.000Z';

export function installPracticeCar(): void {
  const { car, spec } = file as unknown as { car: Car; spec: Spec };
  keep(['cars', { id: car.id, car, spec, changed: FIRST, practice: true }]);
}
