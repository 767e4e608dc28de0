/** What the visits before one have to teach of its car: made once for the records as they are, as every question is asked with it. */
import type { Visit } from '../../core/contract.ts';
import { byText } from '../../core/records/order.ts';
import type { CarRecord, VisitRecord } from '../../core/records/stored.ts';
import { ownedBy } from '../store/index.ts';
import { type Records, records } from './records.ts';
import { visitOf } from './visit-file.ts';
import { type VisitView, visitsOf, visitView } from './visits.ts';

/** Visits that are handed on at the most: core learns from the newest rounds alone. */
const MOST = 40;

const known = new WeakMap<Records['readings'], Map<string, Known>>();
interface Known {
  readonly car: VisitView['car'];
  readonly moves: Records['moves'];
  readonly all: Records['visits'];
  readonly visits: readonly Visit[];
}

/** Visits of the car that were opened before this one and have two readings to hold against each other, oldest first. */
export const earlierVisits = ({ visit, car }: VisitView): readonly Visit[] =>
  taughtVisits(car, visit.id, ({ id, opened }) => id !== visit.id && opened < visit.opened);

/** All visits of a car that have. */
export const visitsThatTeach = (car: CarRecord): readonly Visit[] => taughtVisits(car, '', () => true);

function taughtVisits(car: CarRecord, name: string, isOf: (visit: VisitRecord) => boolean): readonly Visit[] {
  const all = records.value;
  const ofReadings = known.get(all.readings) ?? new Map<string, Known>();
  known.set(all.readings, ofReadings);
  const key = `${car.id} ${name}`;
  const found = ofReadings.get(key);
  if (found && found.car === car && found.moves === all.moves && found.all === all.visits) return found.visits;
  // What is deleted teaches nothing.
  const visits = visitsOf(all, car.id)
    .filter(isOf)
    .filter(({ id }) => ownedBy(all.readings, id).length > 1)
    .sort((a, b) => byText(a.opened, b.opened) || byText(a.id, b.id))
    .slice(-MOST)
    .flatMap(({ id }) => {
      const view = visitView(all, id);
      return view && view.rounds.length > 1 ? [visitOf(view)] : [];
    });
  ofReadings.set(key, { car, moves: all.moves, all: all.visits, visits });
  return visits;
}
