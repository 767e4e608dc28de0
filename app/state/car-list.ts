/** First load. The cars as the list has them, and those that some words find: a key of the search looks at names alone. */
import type { CarRecord } from '../../core/records/stored.ts';
import { isGone } from './gone.ts';
import type { Records } from './records.ts';
import { openVisit } from './visits.ts';

let last: Pick<Records, 'cars' | 'visits'> & {
  readonly order: readonly CarRecord[];
  readonly work: readonly unknown[];
} = {
  cars: [],
  visits: [],
  order: [],
  work: [],
};

/**
 * Those on the rack first; newest edit first; none that is deleted. Made anew when a car or a visit has changed, and not at
 * every drawing; where any is deleted, also when there may be work that brings it back.
 */
export function carsInOrder(all: Records): readonly CarRecord[] {
  const { cars, visits } = all;
  const work = [all.readings, all.moves, all.drafts];
  const isSame = last.work.every((list, i) => list === work[i]);
  if (last.cars === cars && last.visits === visits && isSame) return last.order;
  const here = cars.filter((car) => !isGone(all, car));
  const sorted = here.sort((a, b) => (a.changed < b.changed ? 1 : a.changed > b.changed ? -1 : 0));
  const onRack = new Set(sorted.filter(({ id }) => openVisit(all, id)));
  const isAnyDeleted = [...cars, ...visits].some(({ deleted }) => deleted);
  const order = [...onRack, ...sorted.filter((car) => !onRack.has(car))];
  last = { cars, visits, order, work: isAnyDeleted ? work : [] };
  return last.order;
}

/** Cars whose label or plate has every word asked for; spaces in a plate do not count. */
export function found(cars: readonly CarRecord[], words: string): readonly CarRecord[] {
  const parts = words.toLowerCase().split(/\s+/).filter(Boolean);
  if (parts.length === 0) return cars;
  return cars.filter((car) => {
    const text = namesOf(car);
    return parts.every((part) => text.includes(part));
  });
}

/** Reads the names of all before the first key of a search, so that it need not. */
export function readNames(cars: readonly CarRecord[]): void {
  for (const car of cars) namesOf(car);
}

const names = new WeakMap<CarRecord, string>();

/** What a car goes by. One bad record must not cost the list, so nothing is taken for granted here. */
function namesOf(record: CarRecord): string {
  const known = names.get(record);
  if (known !== undefined) return known;
  const { car } = record;
  const [label, plate] = [car?.label ?? '', car?.plate ?? ''].map(String) as [string, string];
  const text = `${label} ${plate} ${plate.replace(/\s/g, '')}`.toLowerCase();
  names.set(record, text);
  return text;
}
