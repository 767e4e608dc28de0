/** What is remembered outside the database: read back as it was kept, and nothing of it where it is not as it should be. */
import { afterEach, expect, it, vi } from 'vitest';
import { type Outside, outsideOf } from '../../app/store/outside.ts';
import { standIn } from './app.ts';

afterEach(() => vi.unstubAllGlobals());

type Place = Exclude<keyof Outside, 'markFile'>;
const good: { readonly [P in Place]: readonly unknown[] } = {
  mark: [{ database: 'a', writes: 0 }],
  loss: [{ kind: 'gone' }, { kind: 'behind', writes: 2, backup: 'then' }, { kind: 'put-back', records: 1 }],
  backup: ['2026-01-01'],
  underWay: [
    { at: 'then', kind: 'restore', all: 2 },
    { at: 'then', kind: 'undo', all: 2 },
  ],
};
const bad: { readonly [P in Place]: readonly unknown[] } = {
  mark: [
    null,
    'a',
    3,
    [],
    {},
    { database: 'a' },
    { writes: 1 },
    { database: 1, writes: 1 },
    { database: 'a', writes: 1.5 },
  ],
  loss: [null, 'gone', {}, { kind: 'other' }],
  backup: [null, 3, {}],
  underWay: [
    null,
    'then',
    {},
    { at: 1, kind: 'undo' },
    { at: 'then' },
    { at: 'then', kind: 'other' },
    { kind: 'undo' },
  ],
};
const places = Object.keys(good) as Place[];

it.each(places)('%s is read as it was kept, under the name of its database, until it is forgotten', (place) => {
  const inside = standIn();
  const { [place]: kept } = outsideOf('shop');
  const { [place]: others } = outsideOf('other');
  for (const value of good[place]) {
    kept.keep(value as never);
    expect(kept.read()).toEqual(value);
    expect(others.read()).toBeUndefined();
  }
  expect(inside.size).toBe(1);
  kept.keep(undefined);
  expect(kept.read()).toBeUndefined();
  expect(inside.size).toBe(0);
});

it.each(places)('%s that is none is nothing', (place) => {
  const inside = standIn();
  const { [place]: kept } = outsideOf('shop');
  kept.keep(good[place][0] as never);
  const [key = ''] = inside.keys();
  for (const value of bad[place]) {
    inside.set(key, JSON.stringify(value));
    expect(kept.read(), JSON.stringify(value)).toBeUndefined();
  }
  inside.set(key, '{');
  expect(kept.read()).toBeUndefined();
});

it('places are four, each its own', () => {
  const inside = standIn();
  const outside = outsideOf('shop');
  for (const place of places) outside[place].keep(good[place][0] as never);
  expect(inside.size).toBe(places.length);
  for (const place of places) expect(outside[place].read()).toEqual(good[place][0]);
});

it('a browser that gives no such place, or no room, is a check less and no failure', () => {
  const no = () => {
    throw new DOMException('no', 'SecurityError');
  };
  vi.stubGlobal('localStorage', { getItem: no, setItem: no, removeItem: no });
  const { mark } = outsideOf('shop');
  mark.keep({ database: 'a', writes: 1 });
  mark.keep(undefined);
  expect(mark.read()).toBeUndefined();
});
