/** Readings of the same state, as the records hold them: between them nothing was moved. They tell how well this rack repeats. */
import type { Reading } from '../../core/contract.ts';
import { canonical } from '../../core/records/canonical.ts';
import { ownedBy } from '../store/index.ts';
import { carsInOrder } from './car-list.ts';
import type { Records } from './records.ts';
import { visitsOf, visitView } from './visits.ts';

/** Of all cars but the made-up one, group by group. */
export function repeatedReadings(all: Records): readonly (readonly Reading[])[] {
  const visits = carsInOrder(all).flatMap((car) => (car.practice ? [] : visitsOf(all, car.id)));
  return visits.flatMap(({ id }) => {
    if (ownedBy(all.readings, id).length < 2) return [];
    const rounds = visitView(all, id)?.rounds ?? [];
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
  });
}
