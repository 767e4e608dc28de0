/** Readings of the same state, as the records hold them: between them nothing was moved. They tell how well this rack repeats. */
import type { Reading } from '../../core/contract.ts';
import { canonical } from '../../core/records/canonical.ts';
import { breather, ownedBy } from '../store/index.ts';
import { carsInOrder } from './car-list.ts';
import type { Records } from './records.ts';
import { visitsOf, visitView } from './visits.ts';

/**
 * Of all cars but the made-up one, group by group. A shop has tens of thousands of visits: fingers are let in between.
 * @param isOver whether nobody waits for it any more
 */
export async function repeatedReadings(
  all: Records,
  isOver: () => boolean = () => false,
): Promise<readonly (readonly Reading[])[]> {
  const breath = breather();
  const found: (readonly Reading[])[] = [];
  for (const car of carsInOrder(all)) {
    if (car.practice) continue;
    for (const { id } of visitsOf(all, car.id)) {
      await breath();
      if (isOver()) return [];
      found.push(...repeatsIn(all, id));
    }
  }
  return found;
}

function repeatsIn(all: Records, visitId: string): readonly (readonly Reading[])[] {
  if (ownedBy(all.readings, visitId).length < 2) return [];
  const rounds = visitView(all, visitId)?.rounds ?? [];
  const groups: Reading[][] = [];
  rounds.forEach(({ record }, i) => {
    const before = rounds[i - 1];
    const isSame =
      before?.moves.every(({ from, to }) => from === to) &&
      canonical(before.record.settings) === canonical(record.settings);
    if (isSame) groups.at(-1)!.push(record.reading);
    else groups.push([record.reading]);
  });
  return groups.filter((group) => group.length > 1);
}
