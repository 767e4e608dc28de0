/** A shop's records, as many as wanted: every car is the frozen database's, every reading and move like its own. */
import type { Everything } from '../../app/store/schema.ts';
import type { CarRecord, MoveRecord, ReadingRecord, VisitRecord } from '../../core/records/stored.ts';
import frozen from '../../fixtures/databases/v1.json' with { type: 'json' };

const first = <T>(store: string): T => frozen.stores.find(({ name }) => name === store)?.records[0] as unknown as T;
const A_CAR = first<CarRecord>('cars');
const A_READING = first<ReadingRecord>('readings');
const A_MOVE = first<MoveRecord>('moves');

/** ISO 8601, `n` minutes into the shop's time. */
export const minute = (n: number): string => new Date(Date.UTC(2020, 0, 1) + n * 60_000).toISOString();

/** An id as a random one looks, the same for the same words. */
const idOf = (kind: string, n: number): string => {
  let hash = 0x811c9dc5;
  for (const letter of `${kind} ${n}`) hash = Math.imul(hash ^ letter.charCodeAt(0), 0x01000193) >>> 0;
  return `${hash.toString(16).padStart(8, '0')}-${kind}-${n}`;
};
export const carId = (n: number): string => idOf('car', n);
export const visitId = (car: number, n: number): string => idOf('visit', car * 1000 + n);

export interface ShopSize {
  readonly cars: number;
  /** Of each car, the newest of them open for the first `open` cars. */
  readonly visits: number;
  readonly open: number;
  /** Visits of the first car, where it has been here more often than the others. */
  readonly ofFirst?: number;
}

/** Each visit has two readings and three moves after the first of them. */
export function makeShop({ cars, visits, open, ofFirst = visits }: ShopSize): Everything {
  const parts = Array.from({ length: cars }, (_, n) => carAt(n, n === 0 ? ofFirst : visits, n < open));
  const rows = parts.flatMap((part) => part.rows);
  return {
    cars: parts.map(({ car }) => car),
    visits: rows.map(({ visit }) => visit),
    readings: rows.flatMap(({ readings }) => readings),
    moves: rows.flatMap(({ moves }) => moves),
    drafts: [],
    preferences: [],
  };
}

function carAt(n: number, visits: number, isOpen: boolean) {
  const id = carId(n);
  const label = `Tarn estate ${n}`;
  const plate = `BENCH ${n}`;
  const car: CarRecord = { ...A_CAR, id, car: { ...A_CAR.car, id, label, plate }, changed: minute(n) };
  const rows = Array.from({ length: visits }, (_, v) => visitAt(n, v, isOpen && v === visits - 1));
  return { car, rows };
}

function visitAt(car: number, n: number, isOpen: boolean) {
  const id = visitId(car, n);
  const began = (n * 3000 + car) * 100;
  const visit: VisitRecord = {
    id,
    carId: carId(car),
    opened: minute(began),
    ...(isOpen ? {} : { closed: minute(began + 60) }),
    checks: { pressures: 'ok' },
  };
  const own = car * 1000 + n;
  const readings = [0, 1].map((round): ReadingRecord => {
    return { ...A_READING, id: idOf(`reading-${round}`, own), visitId: id, at: minute(began + 1 + 30 * round) };
  });
  const moves = [0, 1, 2].map((move): MoveRecord => {
    const [{ id: readingId } = A_READING] = readings;
    return { ...A_MOVE, id: idOf(`move-${move}`, own), visitId: id, readingId, at: minute(began + 10 + move) };
  });
  return { visit, readings, moves };
}
