/** A car with as many visits as wanted, each with readings as found and as left that differ from visit to visit. */
import type { Everything } from '../../app/store/schema.ts';
import type { CarRecord, ReadingRecord } from '../../core/records/stored.ts';
import practice from '../../fixtures/cars/practice.json' with { type: 'json' };
import { stream } from './random-cars.ts';

const { car, spec } = practice as unknown as CarRecord;
const DAY = 86_400_000;

/** The car is `history-COUNT`; its visits are three weeks apart, the last of them in May of 2026. */
export function makeHistory(count: number): Pick<Everything, 'cars' | 'visits' | 'readings'> {
  const id = `history-${count}`;
  const random = stream(count);
  const near = (middle: number, by: number) => Math.round((middle + by * (random() - random())) * 100) / 100;
  const front = (by: number) => ({ caster: near(4.75, 2 * by), camber: near(-0.6, by), toe: near(0.1, by / 2) });
  const rear = (by: number) => ({ camber: near(-1.2, by), toe: near(0.15, by / 2) });
  const times = Array.from({ length: count }, (_, i) => Date.UTC(2026, 4, 4) - (count - 1 - i) * 21 * DAY);
  const reading = (visit: number, time: number, by: number, name: string): ReadingRecord => ({
    ...{ id: `${id}-${visit}-${name}`, visitId: `${id}-${visit}`, at: new Date(time).toISOString() },
    reading: { LF: front(by), RF: front(by), LR: rear(by), RR: rear(by), toeReference: 'thrust-line' },
    ...{ settings: {}, typed: {} },
  });
  const label = `Car of ${count} visits`;
  return {
    cars: [{ id, car: { ...car, id, label, plate: 'PAST 1' }, spec, changed: new Date(times[0] ?? 0).toISOString() }],
    visits: times.map((time, i) => {
      const [opened, closed] = [time, time + 3_600_000].map((one) => new Date(one).toISOString()) as [string, string];
      return { id: `${id}-${i}`, carId: id, opened, closed };
    }),
    readings: times.flatMap((time, i) => [reading(i, time, 0.8, 'found'), reading(i, time + 1_800_000, 0.15, 'left')]),
  };
}
