import { validateCar } from '../check/car.ts';
import type { Car, Plan } from '../contract.ts';
import { type WhatElse, whatElseWith } from '../plan/what-else.ts';
import { compileCar } from '../pose/car-model.ts';

/**
 * Side effects of every corner that the plan moves, before and after; what geometry does not know is absent.
 * @throws InputError naming the field, the value and what is allowed
 */
export function whatElse(car: Car, plan: Pick<Plan, 'moves' | 'positions'>): WhatElse[] {
  return whatElseWith(compileCar(validateCar(car)), plan);
}
