/** The reading of a backup in its worker, and in the page where there is none: the same pieces, the same refusals. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { backupPieces } from '../../app/store/backup-pieces.ts';
import type { Asked, Told } from '../../app/store/backup-worker.ts';
import { exportFile, memorySlices } from '../../app/store/export.ts';
import { readBackup } from '../../app/store/read-backup.ts';
import { InputError } from '../../core/input-error.ts';
import { whole } from '../tools/backup-text.ts';
import { makeShop } from '../tools/shop.ts';
import { frozenRecords, oneText } from './records.ts';

/** The worker's own module, with its port played: what crosses is cloned, as between threads. */
class WorkerOfModule {
  onmessage: Worker['onmessage'] = null;
  onerror: Worker['onerror'] = null;
  onmessageerror: Worker['onmessageerror'] = null;
  ended = false;
  async start(): Promise<void> {
    vi.stubGlobal('postMessage', (told: Told) => {
      const data = structuredClone(told);
      queueMicrotask(() => this.onmessage?.call(this as never, { data } as MessageEvent));
    });
    vi.resetModules();
    await import('../../app/store/backup-worker.ts');
  }
  postMessage(asked: Asked): void {
    const port = globalThis as unknown as { onmessage: (event: { data: Asked }) => void };
    port.onmessage({ data: structuredClone(asked) });
  }
  terminate(): void {
    this.ended = true;
  }
}

let worker: WorkerOfModule;
beforeEach(() => {
  worker = new WorkerOfModule();
});
afterEach(() => vi.unstubAllGlobals());
const start = (): WorkerOfModule => {
  void worker.start();
  return worker;
};

const shop = makeShop({ cars: 5, visits: 30, open: 1 });
const lines = await exportFile(memorySlices(shop), '2026-01-02T08:00:00Z');
const files: Record<string, Blob> = {
  'of lines': lines,
  'of one text': new Blob([await oneText(frozenRecords)]),
  'of one text, laid out by an editor': new Blob([JSON.stringify(JSON.parse(await oneText(frozenRecords)), null, 2)]),
};

describe('a backup', () => {
  it.each(Object.keys(files))('%s is read in the worker as in the page, and the worker is ended', async (form) => {
    const file = files[form] as Blob;
    const read = await whole(backupPieces(file, start));
    expect(read).toEqual(await whole(readBackup(file)));
    expect(Object.values(read.records).flat().length).toBeGreaterThan(10);
    expect(worker.ended).toBe(true);
  });

  it('is handed over in pieces of a few hundred records', async () => {
    const sizes: number[] = [];
    for await (const { records } of backupPieces(lines, start)) sizes.push(Object.values(records).flat().length);
    expect(sizes.length).toBeGreaterThan(3);
    expect(Math.max(...sizes)).toBeLessThanOrEqual(400);
  });

  it('that is refused is refused by the same rule from the worker, and so is a record of it', async () => {
    const text = (await lines.text()).replace('"Tarn estate 1"', '"Tarn saloon 1"');
    const error = await whole(backupPieces(new Blob([text]), start)).catch((caught: unknown) => caught);
    expect(error).toBeInstanceOf(InputError);
    expect((error as InputError).rule.is).toBe('checksum');
    expect(worker.ended).toBe(true);
    worker = new WorkerOfModule();
    const bad = { ...frozenRecords, moves: [{ id: 'bad' }, ...frozenRecords.moves] } as never;
    const { aside } = await whole(backupPieces(await exportFile(memorySlices(bad), '2026-01-02T08:00:00Z'), start));
    expect(aside).toMatchObject([{ store: 'moves', id: 'bad', error: { name: 'InputError' } }]);
  });

  it('is read by the worker of this module, where the test brings none', async () => {
    const asked: unknown[] = [];
    class OfBrowser extends WorkerOfModule {
      constructor(url: URL, { type }: WorkerOptions) {
        super();
        asked.push([url.pathname.split('/').slice(-3).join('/'), type]);
        worker = this;
        void this.start();
      }
    }
    vi.stubGlobal('Worker', OfBrowser);
    expect(await whole(backupPieces(lines))).toEqual(await whole(readBackup(lines)));
    expect(asked).toEqual([['app/store/backup-worker.ts', 'module']]);
    expect(worker.ended).toBe(true);
  });

  it('that is asked for before its file has come is at its end', async () => {
    await worker.start();
    const told = await new Promise<Told>((done) => {
      worker.onmessage = ({ data }) => {
        if (!('ready' in data)) done(data);
      };
      worker.postMessage({ more: true });
    });
    expect(told).toEqual({ end: true });
  });

  it('is read in the page where no worker starts, or where it dies before it is ready', async () => {
    const none = () => {
      throw new Error('no workers here');
    };
    expect(await whole(backupPieces(lines, none))).toEqual(await whole(readBackup(lines)));
    const dying = () => {
      queueMicrotask(() => worker.onerror?.call(worker as never, {} as ErrorEvent));
      return worker;
    };
    expect(await whole(backupPieces(lines, dying))).toEqual(await whole(readBackup(lines)));
  });

  it('is given up where the worker dies on the way', async () => {
    const pieces = backupPieces(lines, start);
    await pieces.next();
    worker.postMessage = () => undefined;
    await pieces.next();
    const next = pieces.next();
    await Promise.resolve();
    worker.onerror?.call(worker as never, {} as ErrorEvent);
    await expect(next).rejects.toThrow('could not be read to its end');
  });
});
