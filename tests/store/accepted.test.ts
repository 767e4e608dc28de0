/** Whatever the app accepts or writes, it restores: the largest that each way in lets through, out to a file and back. */
import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createStore } from '../../app/store/store.ts';
import { parseCarFile } from '../../core/index.ts';
import { fromCarFile } from '../../core/records/exchange.ts';
import { carFileData } from '../core/records/fixture.ts';
import { draft, freshName, inOrder } from './records.ts';

type Entries = Parameters<ReturnType<typeof createStore>['putAll']>[0];

/** Kept on one phone, to a file, into an empty phone. */
async function thereAndBack(entries: Entries): Promise<void> {
  const [from, to] = [createStore(freshName()), createStore(freshName())];
  await from.putAll(entries);
  const report = await to.restore(await from.exportAll());
  expect(report.aside).toEqual([]);
  expect(inOrder(await to.load())).toEqual(inOrder(await from.load()));
  const counts = Object.values(report.records).reduce((sum, count) => sum + count, 0);
  expect(counts).toBe(entries.length);
  from.close();
  to.close();
}

const nest = (levels: number): unknown => (levels === 0 ? 'x' : { a: nest(levels - 1) });
/** A car file as a person may hand it over, with its car changed. */
const fileWith = (change: object): string => {
  const data = carFileData('ribble-six.json') as { car: object; visits: { carId: string }[] };
  const car = { ...data.car, ...change };
  const visits = data.visits.map((visit) => ({ ...visit, carId: (car as { id?: string }).id ?? visit.carId }));
  return JSON.stringify({ ...data, car, visits });
};
function entriesOf(text: string): Entries {
  const { car, visits, readings, moves } = fromCarFile(parseCarFile(text), {
    now: '2026-01-01T08:00:00Z',
    makeId: () => crypto.randomUUID(),
  });
  return [
    ['cars', car],
    ...visits.map((one) => ['visits', one] as const),
    ...readings.map((one) => ['readings', one] as const),
    ...moves.map((one) => ['moves', one] as const),
  ];
}

describe('what is accepted is restored', () => {
  it('a draft that holds all of a large form', () =>
    thereAndBack([['drafts', draft('build:x', 'a chart, row by row; '.repeat(20_000))]]));

  it('the longest id that a file may have, and what the app makes of it', async () => {
    const id = 'i'.repeat(400);
    expect(() => parseCarFile(fileWith({ id: `${id}i` }))).toThrow('text of 1 to 400 characters');
    const derived = ['reading', 'build', 'total-toe', 'toe-reference'].map((what) => `${what}:${id}`);
    await thereAndBack([
      ...entriesOf(fileWith({ id })),
      ...derived.map((own) => ['drafts', draft(own, '1')] as const),
      ...derived.map(
        (own) => ['preferences', { id: own, value: own.startsWith('toe') ? 'centreline' : true }] as const,
      ),
    ]);
  });

  it('a field that nobody knows, nested as deep as a file may be', async () => {
    const deepest = Array.from({ length: 40 }, (_, levels) => levels).findLast((levels) => {
      try {
        parseCarFile(fileWith({ extra: nest(levels) }));
        return true;
      } catch {
        return false;
      }
    });
    expect(deepest).toBeGreaterThan(15);
    await thereAndBack(entriesOf(fileWith({ extra: nest(deepest!) })));
  });

  it('any text and any value, in every store', { timeout: 60_000 }, () =>
    fc.assert(
      fc.asyncProperty(
        fc.uniqueArray(fc.string({ minLength: 1, maxLength: 60, unit: 'binary' }), { minLength: 1, maxLength: 6 }),
        fc.string({ minLength: 1, maxLength: 400, unit: 'binary' }),
        // As JSON has it, which knows no −0.
        fc.jsonValue({ maxDepth: 12 }).map((value) => JSON.parse(JSON.stringify(value))),
        async (ids, text, value) => {
          const named = ids.filter((id) => !(id in {}));
          const cars = entriesOf(fileWith({ label: text, notes: text }));
          await thereAndBack([
            ...cars,
            ...named.map((id) => ['drafts', draft(id, text)] as const),
            ...named.map((id) => ['preferences', { id, value }] as const),
          ]);
        },
      ),
      { numRuns: 25 },
    ),
  );
});
