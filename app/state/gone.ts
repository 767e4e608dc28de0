/**
 * First load. What is deleted: kept, in no list and in nothing that is derived. A deletion that did not know of all that
 * was done, on whichever phone, does not hold.
 */
import { deletionOf, isDeleted, lastMarked, latestOf, type Work } from '../../core/records/deletion.ts';
import type { CarRecord, VisitRecord } from '../../core/records/stored.ts';
import { byId, ownedBy } from '../store/index.ts';
import type { Records } from './records.ts';

type Deletable = CarRecord | VisitRecord;

const isVisit = (record: Deletable): record is VisitRecord => 'carId' in record;

/** All that hangs on a car or a visit now. */
export function workOn(all: Records, record: Deletable): Work {
  if (isVisit(record)) {
    const records = ownedBy(all.readings, record.id).length + ownedBy(all.moves, record.id).length;
    const typed = ['reading', 'visit'].map((of) => byId(all.drafts, `${of}:${record.id}`)?.changed);
    return { records, latest: latestOf([lastMarked(record), ...typed]) };
  }
  const visits = ownedBy(all.visits, record.id);
  const parts = visits.map((visit) => workOn(all, visit));
  return {
    records: parts.reduce((sum, part) => sum + part.records, visits.length),
    latest: latestOf([
      record.changed,
      byId(all.drafts, `car:${record.id}`)?.changed,
      ...parts.map((one) => one.latest),
    ]),
  };
}

export const isGone = (all: Records, record: Deletable): boolean =>
  deletionOf(record) !== undefined && isDeleted(record, workOn(all, record));

/** When somebody deleted it who did not know of all that was done: it is here, and that is said. */
export const deletedUnawares = (all: Records, record: Deletable): string | undefined =>
  isGone(all, record) ? undefined : deletionOf(record)?.at;
