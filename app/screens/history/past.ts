/** What each visit of a car found and left. */
import type { Reading } from '../../../core/contract.ts';
import type { Records } from '../../state/records.ts';
import { leftReading, visitsOf, visitView } from '../../state/visits.ts';

export interface Past {
  readonly day: string;
  readonly found: Reading;
  readonly left: Reading;
}

/** Oldest first, visits with a reading only. */
export function pastOf(all: Records, carId: string): readonly Past[] {
  return [...visitsOf(all, carId)].reverse().flatMap((visit) => {
    const view = visitView(all, visit.id);
    const first = view?.rounds[0];
    return first ? [{ day: visit.opened, found: first.record.reading, left: leftReading(view) ?? {} }] : [];
  });
}
