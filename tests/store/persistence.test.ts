/** Asking the browser to keep the records: what is asked when, and how it stands then. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type * as Module from '../../app/store/persistence.ts';

let module: typeof Module;
beforeEach(async () => {
  vi.resetModules();
  module = await import('../../app/store/persistence.ts');
});
afterEach(() => vi.unstubAllGlobals());

function browser(is: unknown, becomes: unknown) {
  const answer = (what: unknown) => async () => {
    if (what instanceof Error) throw what;
    return what;
  };
  const storage = { persisted: vi.fn(answer(is)), persist: vi.fn(answer(becomes)) };
  vi.stubGlobal('navigator', { storage });
  return storage;
}

it('is not known before it is looked at', () => {
  expect(module.persistence.value).toBe('unknown');
});

it('to look asks for nothing', async () => {
  const { persist } = browser(false, true);
  expect(await module.persisted()).toBe(false);
  expect(module.persistence.value).toBe('unknown');
  expect(persist).not.toHaveBeenCalled();
  browser(true, true);
  expect(await module.persisted()).toBe(true);
  expect(module.persistence.value).toBe('granted');
});

it('is asked for once it is not given', async () => {
  const { persist } = browser(false, true);
  expect(await module.askToPersist()).toBe(true);
  expect(persist).toHaveBeenCalledTimes(1);
  expect(module.persistence.value).toBe('granted');
  const given = browser(true, false);
  expect(await module.askToPersist()).toBe(true);
  expect(given.persist).not.toHaveBeenCalled();
});

it('may be refused, or fail, which is refused too', async () => {
  browser(false, false);
  expect(await module.askToPersist()).toBe(false);
  expect(module.persistence.value).toBe('refused');
  browser(false, true);
  await module.askToPersist();
  browser(false, new Error('no'));
  expect(await module.askToPersist()).toBe(false);
  expect(module.persistence.value).toBe('refused');
});

it.each([{}, { storage: {} }, undefined])('a browser that knows nothing of it: %j', async (navigator) => {
  vi.stubGlobal('navigator', navigator);
  expect(await module.persisted()).toBe(false);
  expect(module.persistence.value).toBe('unsupported');
  vi.resetModules();
  module = await import('../../app/store/persistence.ts');
  expect(await module.askToPersist()).toBe(false);
  expect(module.persistence.value).toBe('unsupported');
});
