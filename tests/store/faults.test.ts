/** Faults of the phone, of the browser and of other hands at any write and in any order: "saved" is true each time. */
import fc from 'fast-check';
import { afterEach, expect, it, vi } from 'vitest';
import type { Entry } from '../../app/store/schema.ts';
import { app, asked, clear, entriesOf, onDisk } from './app.ts';
import { closeAll } from './opened.ts';
import { car, draft, freshName, frozenRecords, inOrder } from './records.ts';

afterEach(() => {
  vi.restoreAllMocks();
  closeAll();
});

/** What a phone or a browser does to a write, each as the platform shows it: what is called, and what that throws. */
const faults = {
  'no room': ['put', 'QuotaExceededError'],
  'a throw in the middle': ['put', 'DataError'],
  'an abort': ['put', 'AbortError'],
  'a dead connection': ['transaction', 'InvalidStateError'],
  'a database that does not open': ['open', 'UnknownError'],
} as const;
/** Faults that are still to come. */
let armed: (typeof faults)[keyof typeof faults][] = [];
function arm(): void {
  const { put } = IDBObjectStore.prototype;
  const { transaction } = IDBDatabase.prototype;
  const { open } = IDBFactory.prototype;
  const strike = (method: string): string | undefined => {
    const at = armed.findIndex(([of]) => of === method);
    return at < 0 ? undefined : armed.splice(at, 1)[0]?.[1];
  };
  const thrown = (error: string) => new DOMException('as the phone says', error);
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
    const error = strike('put');
    if (error === 'AbortError') this.transaction.abort();
    if (error) throw thrown(error);
    return put.apply(this, args);
  });
  vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (this: IDBDatabase, ...args) {
    // fake-indexeddb begins some of its own, without options.
    const error = args[2] && strike('transaction');
    if (error) throw thrown(error);
    return transaction.apply(this, args);
  });
  vi.spyOn(IDBFactory.prototype, 'open').mockImplementation(function (this: IDBFactory, ...args) {
    const error = strike('open');
    if (error) throw thrown(error);
    return open.apply(this, args);
  });
}
const away = {
  stays: async () => undefined,
  cleared: clear,
  deleted: (name: string) => asked(indexedDB.deleteDatabase(name)),
};

interface Step {
  readonly away: keyof typeof away;
  readonly faults: (keyof typeof faults)[];
  readonly flush: boolean;
  readonly entry: Entry;
}
const uncounted: Step = {
  ...{ away: 'stays', flush: true, entry: ['cars', car] },
  faults: ['a dead connection', 'a database that does not open'],
};
const lost: Step = { away: 'cleared', faults: [], flush: false, entry: ['drafts', draft('b', '2')] };

it('whatever happens to the writes, and in any order: what is said to be saved is on the disk, all of it', () => {
  arm();
  return fc.assert(
    fc.asyncProperty(
      fc.array(
        fc.record<Step>({
          away: fc.constantFrom(...(Object.keys(away) as (keyof typeof away)[])),
          faults: fc.array(fc.constantFrom(...(Object.keys(faults) as (keyof typeof faults)[])), { maxLength: 3 }),
          flush: fc.boolean(),
          entry: fc.constantFrom(...entriesOf(frozenRecords)),
        }),
        { minLength: 1, maxLength: 5 },
      ),
      async (steps) => {
        const name = freshName();
        const { store, keep, memory } = await app(name);
        for (const step of steps) {
          await away[step.away](name);
          armed = step.faults.map((fault) => faults[fault]);
          void keep(step.entry);
          if (step.flush) await store.flush().catch(() => undefined);
          for (let tries = 0; store.saveState.value !== 'saved'; tries += 1) {
            if (tries > 1000) throw new Error(`never saved: ${store.saveMessage.value}`);
            await new Promise((wait) => setTimeout(wait, 2));
            store.retry();
          }
          armed = [];
          expect(await onDisk(name)).toEqual(inOrder(memory()));
        }
        store.close();
      },
    ),
    // Once only by writes that could not wait, and so were not counted: by its being empty it is missed all the same.
    { numRuns: 60, examples: [true, false].map((flush) => [[uncounted, { ...lost, flush }]]) },
  );
});
