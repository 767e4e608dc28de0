import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { shareBackup } from '../../app/store/share.ts';
import { createStore, type Store } from '../../app/store/store.ts';
import { car, freshName, storesOf } from './records.ts';

let store: Store;
let coarse: boolean;
const clicked = vi.fn();
const share = vi.fn(async (_data: ShareData) => undefined);
const canShare = vi.fn((_data: ShareData) => true);

beforeEach(async () => {
  store = createStore(freshName());
  await store.put('cars', car);
  coarse = true;
  const link = { click: () => clicked(link.download), remove: () => undefined, download: '' };
  vi.stubGlobal('document', { createElement: () => link, body: { append: () => undefined } });
  vi.stubGlobal('navigator', { share, canShare });
  vi.stubGlobal('matchMedia', () => ({ matches: coarse }));
  vi.spyOn(URL, 'createObjectURL').mockReturnValue('blob:backup');
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
  share.mockReset();
  canShare.mockReset().mockReturnValue(true);
  clicked.mockReset();
  store.close();
});

const lastBackup = async () => (await store.load()).preferences.find(({ id }) => id === 'backup')?.value;
const shared = () => share.mock.calls[0]?.[0].files?.[0] as File;

describe('handing over a backup', () => {
  it('opens the share sheet of a phone with the whole backup, and notes when', async () => {
    expect(await shareBackup(store)).toBe('shared');
    expect(shared().name).toMatch(/^cornerwright-\d{4}-\d{2}-\d{2}\.json$/);
    expect(await storesOf(shared())).toEqual(await store.load().then((all) => ({ ...all, preferences: [] })));
    expect(await lastBackup()).toEqual({ at: expect.stringMatching(/^\d{4}-\d{2}-\d{2}T/) });
    expect(clicked).not.toHaveBeenCalled();
  });

  it('shares it as text where JSON is not taken', async () => {
    canShare.mockImplementation(({ files }) => files?.[0]?.type === 'text/plain');
    expect(await shareBackup(store)).toBe('shared');
    expect(shared().name).toMatch(/\.txt$/);
    expect((await storesOf(shared())).cars).toEqual([car]);
  });

  it('downloads it where no file can be shared, and on a computer', async () => {
    canShare.mockReturnValue(false);
    expect(await shareBackup(store)).toBe('downloaded');
    canShare.mockReturnValue(true);
    coarse = false;
    expect(await shareBackup(store)).toBe('downloaded');
    expect(share).not.toHaveBeenCalled();
    expect(clicked).toHaveBeenCalledTimes(2);
    expect(clicked.mock.calls[0]?.[0]).toMatch(/\.json$/);
  });

  it('downloads it when sharing fails', async () => {
    share.mockRejectedValue(new DOMException('not now', 'NotAllowedError'));
    expect(await shareBackup(store)).toBe('downloaded');
    expect(clicked).toHaveBeenCalledTimes(1);
  });

  it('notes nothing when the person closes the sheet', async () => {
    share.mockRejectedValue(new DOMException('closed', 'AbortError'));
    expect(await shareBackup(store)).toBe('cancelled');
    expect(await lastBackup()).toBeUndefined();
  });
});
