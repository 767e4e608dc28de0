/**
 * First load. Which cars the first screen showed the last time, noted outside the database, so that the next start reads
 * these before all others. A note and no record: where it is old or lost, the rows are others for as long as all is read.
 */
import type { Wanted } from '../store/index.ts';
import { carsInOrder } from './car-list.ts';
import { records } from './records.ts';

const PLACE = 'cornerwright-first-rows';
/** More than a tall phone shows. */
const ROWS = 12;

export function rowsLast(): Wanted {
  try {
    const ids: unknown = JSON.parse(localStorage.getItem(PLACE) ?? '[]');
    const cars = Array.isArray(ids) ? ids.filter((id) => typeof id === 'string').slice(0, ROWS) : [];
    return { cars, visits: [] };
  } catch {
    return { cars: [], visits: [] };
  }
}

/** Notes them now, and whenever the app is put away. */
export function noteRows(): void {
  note();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') note();
  });
}

function note(): void {
  const ids = carsInOrder(records.value)
    .slice(0, ROWS)
    .map(({ id }) => id);
  try {
    localStorage.setItem(PLACE, JSON.stringify(ids));
  } catch {
    // Without the note the next start reads everything first.
  }
}
