/** A car or a visit that was begun by mistake deleted, and brought back; nothing of either goes from the records. */
import { deletionOf } from '../../core/records/deletion.ts';
import { broughtBack, deletedNow } from '../../core/records/deletion-marks.ts';
import { byTime } from '../../core/records/order.ts';
import type { CarRecord, VisitRecord } from '../../core/records/stored.ts';
import { byId, now } from '../store/index.ts';
import { isGone, workOn } from './gone.ts';
import { keep, type Records, records } from './records.ts';

export function deleteVisit({ id }: Pick<VisitRecord, 'id'>): void {
  const visit = byId(records.value.visits, id);
  if (visit) keep(['visits', deletedNow(visit, workOn(records.value, visit), now())]);
}

export function deleteCar({ id }: Pick<CarRecord, 'id'>): void {
  const car = byId(records.value.cars, id);
  if (car) keep(['cars', deletedNow(car, workOn(records.value, car), now())]);
}

export function bringBackVisit({ id }: Pick<VisitRecord, 'id'>): void {
  const visit = byId(records.value.visits, id);
  if (visit) keep(['visits', broughtBack(visit, now())]);
}

export function bringBackCar({ id }: Pick<CarRecord, 'id'>): void {
  const car = byId(records.value.cars, id);
  if (car) keep(['cars', broughtBack(car, now())]);
}

/** What can be brought back. */
export interface Gone {
  /** When it was deleted. */
  readonly at: string;
  readonly car: CarRecord;
  /** Where it is but a visit of the car. */
  readonly visit?: VisitRecord;
}

/** Deleted cars, and deleted visits of those that are not, the last deleted first. */
export function goneFrom(all: Records): readonly Gone[] {
  const cars = all.cars.filter((car) => isGone(all, car)).map((car): Gone => ({ car, at: atOf(car) }));
  const visits = all.visits.flatMap((visit): readonly Gone[] => {
    const car = byId(all.cars, visit.carId);
    return car && isGone(all, visit) && !isGone(all, car) ? [{ visit, car, at: atOf(visit) }] : [];
  });
  return [...cars, ...visits].sort((a, b) => byTime(b.at, a.at));
}

/** When it was deleted, ISO 8601. */
export const atOf = (record: CarRecord | VisitRecord): string => deletionOf(record)?.at ?? '';
