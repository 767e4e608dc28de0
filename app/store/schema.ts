/**
 * What the database is made of. A new schema is one more step at the end of `STEPS` and a new frozen dump in
 * `fixtures/databases`; a step that has shipped is never edited.
 */
import type { DBSchema, IDBPDatabase, IDBPTransaction } from 'idb';
import {
  type CarRecord,
  type DraftRecord,
  type MoveRecord,
  type PreferenceRecord,
  type ReadingRecord,
  STORE_NAMES,
  type StoreName,
  type Stores,
  type VisitRecord,
} from '../../core/records/stored.ts';

export const DATABASE = 'cornerwright';

/** All records, by store. */
export type Everything = Stores;
export type { StoreName };
export const STORES = STORE_NAMES;
export type RecordOf<S extends StoreName> = Everything[S][number];
/** One record and the store that it belongs to. */
export type Entry = { [S in StoreName]: readonly [S, RecordOf<S>] }[StoreName];

/**
 * The preference that held what the last restore changed, before that was kept beside the database: it can still be undone.
 * It is in no backup: another phone's undo is nothing to it.
 */
export const UNDO = 'undo-restore';
/** The preference that tells whether this is still the database that was written to; see `canary.ts`. */
export const CANARY = 'canary';
/** What the app keeps for itself: no screen shows it. */
export const isInternal = (id: string): boolean => id === UNDO || id === CANARY;
/** Preferences that no file takes out or brings in: that, when this phone last saved to one, and who has it in hand. */
export const isOfThisPhone = (id: string): boolean => isInternal(id) || id === 'backup' || id === 'technician';

export interface Schema extends DBSchema {
  cars: { key: string; value: CarRecord };
  visits: { key: string; value: VisitRecord; indexes: { carId: string } };
  readings: { key: string; value: ReadingRecord; indexes: { visitId: string } };
  moves: { key: string; value: MoveRecord; indexes: { visitId: string } };
  drafts: { key: string; value: DraftRecord };
  preferences: { key: string; value: PreferenceRecord };
}
export type Database = IDBPDatabase<Schema>;
export type Transaction<M extends IDBTransactionMode> = IDBPTransaction<Schema, StoreName[], M>;
type Upgrade = Transaction<'versionchange'>;

/** Step n leads from schema n to schema n + 1. */
const STEPS: readonly ((database: Database, transaction: Upgrade) => void)[] = [
  (database) => {
    database.createObjectStore('cars', { keyPath: 'id' });
    database.createObjectStore('visits', { keyPath: 'id' }).createIndex('carId', 'carId');
    database.createObjectStore('readings', { keyPath: 'id' }).createIndex('visitId', 'visitId');
    database.createObjectStore('moves', { keyPath: 'id' }).createIndex('visitId', 'visitId');
    database.createObjectStore('drafts', { keyPath: 'id' });
    database.createObjectStore('preferences', { keyPath: 'id' });
  },
];

export const SCHEMA_VERSION = STEPS.length;

/** Brings a database of any earlier schema (0: none yet) to the present one, inside its upgrade transaction. */
export function upgrade(database: Database, from: number, transaction: Upgrade): void {
  for (const step of STEPS.slice(from)) step(database, transaction);
}
