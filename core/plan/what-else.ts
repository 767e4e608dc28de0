/** What a plan changes beside the angles that the rack shows. */

import type { Corner, Plan } from '../contract.ts';
import { type CarModel, cornerOf } from '../pose/car-model.ts';
import { type SideEffects, sideEffectsOf } from '../pose/side-effects.ts';

/** Side effects of one corner before and after a plan. */
export interface WhatElse {
  readonly corner: Corner;
  readonly before: SideEffects;
  readonly after: SideEffects;
}

/** Side effects of every corner that the plan moves, before and after; what geometry does not know is absent. */
export function whatElseWith(model: CarModel, { moves, positions }: Pick<Plan, 'moves' | 'positions'>): WhatElse[] {
  const corners = [...new Set(moves.map(({ corner }) => corner))];
  const before = { ...positions };
  for (const { corner, adjuster, from } of moves) before[corner] = { ...before[corner], [adjuster]: from };
  return corners.map((corner) => ({
    corner,
    before: sideEffectsOf(cornerOf(model, corner, before), before[corner]),
    after: sideEffectsOf(cornerOf(model, corner, positions), positions[corner]),
  }));
}
