/** A backup read by a worker: the same pieces as in the page, errors as they were, and a worker that ends with it. */
import 'fake-indexeddb/auto';
import { afterAll, afterEach, expect, it, vi } from 'vitest';
import { backupPieces } from '../../app/store/backup-pieces.ts';
import type { Asked, Told } from '../../app/store/backup-worker.ts';
import { createStore } from '../../app/store/store.ts';
import type { InputError } from '../../core/input-error.ts';
import type { CheckedBackup } from '../../core/records/envelope.ts';
import { makeShop } from '../tools/shop.ts';
import { entriesOf } from './app.ts';
import { freshName } from './records.ts';

const shop = makeShop({ cars: 8, visits: 6, open: 1 });

afterEach(() => {
  vi.useRealTimers();
  // One that was ended may still have something to say.
  vi.stubGlobal('postMessage', () => undefined);
});
afterAll(() => vi.unstubAllGlobals());

async function fileOf(all: Parameters<typeof entriesOf>[0]): Promise<Blob> {
  const store = createStore(freshName());
  await store.putAll(entriesOf(all));
  const file = await store.exportAll();
  store.close();
  return file;
}

interface Started {
  onmessage: ((event: MessageEvent<Told>) => void) | null;
  onerror: ((event: never) => void) | null;
  onmessageerror: ((event: never) => void) | null;
  readonly postMessage: (asked: Asked) => void;
  readonly terminate: () => void;
}

/** The worker's own code, with wires of this thread. */
function worker(terminated = vi.fn()): { readonly start: () => never; readonly terminated: typeof terminated } {
  const start = () => {
    const one: Started = {
      ...{ onmessage: null, onerror: null, onmessageerror: null },
      postMessage: (data) => (globalThis as never as { onmessage(event: object): void }).onmessage({ data }),
      terminate: terminated,
    };
    vi.stubGlobal('postMessage', (data: Told) => queueMicrotask(() => one.onmessage?.({ data } as MessageEvent<Told>)));
    vi.resetModules();
    void import('../../app/store/backup-worker.ts');
    return one as never;
  };
  return { start, terminated };
}
const none = (): never => {
  throw new Error('no workers here');
};
async function all(pieces: AsyncGenerator<CheckedBackup>): Promise<CheckedBackup[]> {
  const list: CheckedBackup[] = [];
  for await (const piece of pieces) list.push(piece);
  return list;
}

it('comes in the same pieces as in the page, with what is set aside and why', async () => {
  const broken = { ...shop, visits: [...shop.visits, { id: 'odd', carId: 'none', opened: 3 as never }] };
  const file = await fileOf(broken);
  const inPage = await all(backupPieces(file, none));
  const { start, terminated } = worker();
  const inWorker = await all(backupPieces(file, start));
  expect(inWorker).toEqual(inPage);
  expect(inPage.length).toBeGreaterThan(1);
  const aside = inWorker.flatMap((piece) => piece.aside);
  expect(aside).toHaveLength(1);
  expect(aside[0]?.error).toBeInstanceOf(Error);
  expect(terminated).toHaveBeenCalledTimes(1);
});

it('is refused as in the page', async () => {
  const file = new Blob([(await (await fileOf(shop)).text()).replace('Tarn estate 3', 'Tarn estate 4')]);
  const { start, terminated } = worker();
  const [inPage, inWorker] = [backupPieces(file, none), backupPieces(file, start)].map((pieces) =>
    all(pieces).catch((error: InputError) => error),
  );
  expect(await inPage).toMatchObject({ name: 'InputError', message: expect.stringContaining('checksum') });
  expect(await inWorker).toMatchObject({ ...(await inPage), message: ((await inPage) as InputError).message });
  expect(terminated).toHaveBeenCalledTimes(1);
});

it('ends its worker where nobody goes on', async () => {
  const { start, terminated } = worker();
  for await (const _ of backupPieces(await fileOf(shop), start)) break;
  expect(terminated).toHaveBeenCalledTimes(1);
});

it('is read in the page where the worker does not start, or never says that it is there', async () => {
  const file = await fileOf(shop);
  const expected = await all(backupPieces(file, none));
  const terminate = vi.fn();
  const failing = { postMessage: vi.fn(), terminate, onmessage: null, onerror: null, onmessageerror: null };
  setTimeout(() => (failing as never as { onerror(): void }).onerror(), 5);
  expect(await all(backupPieces(file, () => failing))).toEqual(expected);
  expect(terminate).toHaveBeenCalledTimes(1);
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  const silent = all(backupPieces(file, () => ({ ...failing, onerror: null })));
  await vi.advanceTimersByTimeAsync(8_001);
  expect(await silent).toEqual(expected);
  expect(terminate).toHaveBeenCalledTimes(2);
  expect(failing.postMessage).not.toHaveBeenCalled();
});

it.each(['onerror', 'onmessageerror'] as const)('is told where the worker dies in it (%s)', async (how) => {
  const file = await fileOf(shop);
  const terminate = vi.fn();
  const dies = { postMessage: () => undefined, terminate, onmessage: null, onerror: null, onmessageerror: null };
  const wired = dies as never as Record<string, (event: object) => void>;
  setTimeout(() => wired.onmessage?.({ data: { ready: true } }), 5);
  setTimeout(() => wired[how]?.({}), 50);
  await expect(all(backupPieces(file, () => dies))).rejects.toThrow('ran short of memory');
  expect(terminate).toHaveBeenCalledTimes(1);
});
