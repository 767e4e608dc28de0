import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { shareBackup } from '../../app/store/share.ts';
import { createStore, type Store } from '../../app/store/store.ts';
import { car, freshName, storesOf } from './records.ts';

let store: Store;
let coarse: boolean;
const clicked = vi.fn();
const share = vi.fn(async (_data: ShareData) => undefined);
const revoked = vi.fn();
const page = { made: vi.fn(), shown: vi.fn(), removed: vi.fn() };
const canShare = vi.fn((_data: ShareData) => true);

beforeEach(async () => {
  store = createStore(freshName());
  await store.put('cars', car);
  coarse = true;
  const link = { click: () => clicked(link.download, link.href), remove: page.removed, download: '', href: '' };
  const createElement = (name: string) => {
    page.made(name);
    return link;
  };
  vi.stubGlobal('document', { createElement, body: { append: (one: object) => page.shown(one === link) } });
  vi.stubGlobal('navigator', { share, canShare });
  vi.stubGlobal('matchMedia', () => ({ matches: coarse }));
  vi.spyOn(URL, 'createObjectURL').mockReturnValue('blob:backup');
  vi.spyOn(URL, 'revokeObjectURL').mockImplementation(revoked);
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
  share.mockReset();
  canShare.mockReset().mockReturnValue(true);
  for (const spy of [clicked, revoked, ...Object.values(page)]) spy.mockReset();
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

  it('downloads it by a link that is gone at once, to an address that outlives the start of the download', async () => {
    coarse = false;
    vi.useFakeTimers({ toFake: ['setTimeout'] });
    try {
      const backup = new Blob(['{}']);
      const put = vi.fn(async () => undefined);
      expect(await shareBackup({ exportAll: async () => backup, put } as unknown as Store)).toBe('downloaded');
      expect(page.made.mock.calls).toEqual([['a']]);
      expect(page.shown.mock.calls).toEqual([[true]]);
      expect(clicked.mock.calls).toEqual([
        [expect.stringMatching(/^cornerwright-\d{4}-\d\d-\d\d\.json$/), 'blob:backup'],
      ]);
      expect(page.removed).toHaveBeenCalledTimes(1);
      const file = vi.mocked(URL.createObjectURL).mock.calls[0]?.[0] as File;
      expect([file.type, await file.text()]).toEqual(['application/json', '{}']);
      const { at } = (put.mock.calls as unknown as [string, { value: { at: string } }][])[0]![1].value;
      expect(put.mock.calls).toEqual([['preferences', { id: 'backup', value: { at }, changed: at }]]);
      await vi.advanceTimersByTimeAsync(59_999);
      expect(revoked).not.toHaveBeenCalled();
      await vi.advanceTimersByTimeAsync(1);
      expect(revoked.mock.calls).toEqual([['blob:backup']]);
    } finally {
      vi.useRealTimers();
    }
  });

  it('shares it under its name, and asks for what it shares', async () => {
    await shareBackup(store);
    expect(share.mock.calls[0]?.[0]).toEqual({ files: [shared()], title: shared().name });
    expect([shared().type, canShare.mock.calls[0]?.[0]]).toEqual(['application/json', { files: [shared()] }]);
  });

  it('downloads it on a phone that shares, but no files', async () => {
    vi.stubGlobal('navigator', { share });
    expect(await shareBackup(store)).toBe('downloaded');
    expect(share).not.toHaveBeenCalled();
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
