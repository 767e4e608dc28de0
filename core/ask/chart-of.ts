import { called } from '../check/adjusters.ts';
import type { Adjuster, Settings, Suspension } from '../contract.ts';
import { InputError } from '../input-error.ts';
import { type Chart, chartOfPair } from '../plan/chart.ts';
import { checkedCorner } from './checked-corner.ts';

/**
 * Camber, caster and toe that every pair of positions of two adjusters gives, degrees, against where they stand.
 * @param across, down ids of two adjusters of the corner
 * @throws InputError naming the field, the value and what is allowed
 */
export function chartOf(
  suspension: Suspension,
  adjusters: readonly Adjuster[],
  settings: Settings,
  across: string,
  down: string,
): Chart {
  const { model, adjusters: fitted, settings: stands } = checkedCorner(suspension, adjusters, settings);
  return chartOfPair(model, stands, find(fitted, across, 'across'), find(fitted, down, 'down'));
}

function find(adjusters: readonly Adjuster[], id: string, field: string): Adjuster {
  const found = adjusters.find((one) => one.id === id);
  if (!found) throw new InputError(field, id, { is: 'adjuster', among: called(adjusters) });
  return found;
}
