/** Every backup format that has shipped restores into the present code with every record in it. */
import 'fake-indexeddb/auto';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { createStore, type Store } from '../../app/store/store.ts';
import { BACKUP_VERSION } from '../../core/records/backup-lines.ts';
import { freshName, frozenRecords, inOrder } from '../store/records.ts';

const folder = fileURLToPath(new URL('../../fixtures/backups/', import.meta.url));
const backups = readdirSync(folder)
  .filter((file) => /^v\d+\./.test(file))
  .map((file) => ({ file, text: readFileSync(folder + file, 'utf8') }));

describe('frozen backups', () => {
  const stores: Store[] = [];
  afterAll(() => {
    for (const store of stores) store.close();
  });

  it('there is one of every version, 1 to the present', () => {
    const versions = backups.map(({ text }) => JSON.parse(text.split('\n')[0] ?? '').version as number);
    expect(versions.sort((a, b) => a - b)).toEqual(Array.from({ length: BACKUP_VERSION }, (_, index) => index + 1));
  });

  it.each(backups)('$file restores with every record', async ({ text }) => {
    const store = createStore(freshName());
    stores.push(store);
    const report = await store.restore(text);
    expect(report.made).toBe('2025-06-11T17:30:00.000Z');
    expect(inOrder(await store.load())).toEqual(inOrder(frozenRecords));
  });
});
