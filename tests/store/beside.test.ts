/** What is kept beside the database, in files and in a database: whole or not at all, and in order. */
import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { openBeside } from '../../app/store/beside.ts';
import { besideInDatabase } from '../../app/store/beside-database.ts';
import { besideInFiles } from '../../app/store/beside-files.ts';
import { asked } from './app.ts';
import { freshName } from './records.ts';

const missing = () => new DOMException('not there', 'NotFoundError');
/** Of the next write: what it throws. */
let refused: DOMException | undefined;
let aborted = 0;

/** A page's own file system as far as it is used: a file takes on what was written when its stream is closed. */
class Folder {
  readonly files = new Map<string, Blob>();
  readonly folders = new Map<string, Folder>();
  async getDirectoryHandle(name: string, { create = false } = {}): Promise<Folder> {
    const found = this.folders.get(name) ?? (create ? new Folder() : undefined);
    if (!found) throw missing();
    this.folders.set(name, found);
    return found;
  }
  async getFileHandle(name: string, { create = false } = {}) {
    if (!this.files.has(name)) {
      if (!create) throw missing();
      this.files.set(name, new Blob());
    }
    return {
      getFile: async () => this.files.get(name),
      createWritable: async () => {
        let content = new Blob();
        return {
          write: async (more: Blob) => {
            if (refused) throw refused;
            content = new Blob([content, more]);
          },
          abort: async () => {
            aborted += 1;
          },
          close: async () => void this.files.set(name, content),
        };
      },
    };
  }
  async *keys() {
    yield* [...this.files.keys()].reverse();
  }
  async removeEntry(name: string): Promise<void> {
    if (refused) throw refused;
    if (!this.files.delete(name)) throw missing();
  }
}

let root: Folder;
beforeEach(() => {
  root = new Folder();
  refused = undefined;
  aborted = 0;
});
afterEach(() => vi.unstubAllGlobals());
function withFiles(): void {
  class FileHandle {
    createWritable(): void {}
  }
  vi.stubGlobal('FileSystemFileHandle', FileHandle);
  vi.stubGlobal('navigator', { storage: { getDirectory: async () => root } });
}
const text = async (blob: Blob | undefined) => blob && (await blob.text());

describe.each(['files', 'a database'])('in %s', (where) => {
  beforeEach(() => {
    if (where === 'files') withFiles();
  });

  it('is read as it was kept, the newer in place of the older, by names in order, until it is forgotten', async () => {
    const name = freshName();
    const beside = await openBeside(name);
    expect(await beside.names()).toEqual([]);
    for (const one of ['a', 'c', 'b']) await beside.keep(one, new Blob([`it is ${one}`]));
    await beside.keep('a', new Blob(['newer']));
    expect(await beside.names()).toEqual(['a', 'b', 'c']);
    expect(await text(await beside.read('a'))).toBe('newer');
    expect(await text(await beside.read('b'))).toBe('it is b');
    expect(await beside.read('d')).toBeUndefined();
    await beside.forget('b');
    await beside.forget('d');
    expect(await beside.names()).toEqual(['a', 'c']);
    expect(await beside.read('b')).toBeUndefined();
    beside.close();
    const again = await openBeside(name);
    expect(await text(await again.read('c'))).toBe('it is c');
    again.close();
    expect(root.folders.size).toBe(where === 'files' ? 1 : 0);
  });

  it('may be larger than one part', async () => {
    const beside = await openBeside(freshName());
    const large = 'x'.repeat(1_000_000) + 'y'.repeat(1_000_000) + 'z'.repeat(7);
    await beside.keep('large', new Blob([large]));
    expect((await text(await beside.read('large'))) === large).toBe(true);
    await beside.keep('large', new Blob(['small']));
    expect(await text(await beside.read('large'))).toBe('small');
    beside.close();
  });
});

it('in a database lies in parts of a million bytes, none of them empty but where all is, and no part of one before', async () => {
  const name = freshName();
  const beside = await besideInDatabase(name);
  const database = await asked(indexedDB.open(name));
  const sizes = async () => {
    const parts: ArrayBuffer[] = await asked(database.transaction('parts').objectStore('parts').getAll());
    return parts.map(({ byteLength }) => byteLength);
  };
  for (const [size, expected] of [
    [1_000_007, [1_000_000, 7]],
    [1_000_000, [1_000_000]],
    [5, [5]],
    [0, [0]],
  ] as const) {
    await beside.keep('a', new Blob([new Uint8Array(size)]));
    expect(await sizes()).toEqual(expected);
    expect((await beside.read('a'))?.size).toBe(size);
  }
  await beside.forget('a');
  expect(await sizes()).toEqual([]);
  database.close();
  beside.close();
});

describe('in files', () => {
  it('what cannot be written is said in words, and what was there stays', async () => {
    withFiles();
    const beside = await openBeside(freshName());
    await beside.keep('a', new Blob(['older']));
    refused = new DOMException('full', 'QuotaExceededError');
    await expect(beside.keep('a', new Blob(['newer']))).rejects.toThrow('no room left on this phone');
    expect(aborted).toBe(1);
    await expect(beside.forget('a')).rejects.toThrow('full');
    refused = undefined;
    expect(await text(await beside.read('a'))).toBe('older');
  });

  it('one that was never closed is none; another failure is one', async () => {
    withFiles();
    const beside = await openBeside('shop');
    const folder = root.folders.get('shop-beside')!;
    folder.files.set('a', new Blob());
    expect(await beside.read('a')).toBeUndefined();
    vi.spyOn(folder, 'getFileHandle').mockRejectedValue(new DOMException('broken', 'NotReadableError'));
    await expect(beside.read('a')).rejects.toThrow('broken');
  });

  it('there is none where the browser has none, cannot write to it, or refuses it', async () => {
    expect(await besideInFiles('shop')).toBeUndefined();
    vi.stubGlobal('FileSystemFileHandle', class {});
    expect(await besideInFiles('shop')).toBeUndefined();
    withFiles();
    vi.stubGlobal('navigator', {
      storage: { getDirectory: () => Promise.reject(new DOMException('no', 'SecurityError')) },
    });
    expect(await besideInFiles('shop')).toBeUndefined();
    withFiles();
    expect(await besideInFiles('shop')).toBeDefined();
  });
});
