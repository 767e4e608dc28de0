/** Where a move by the rack ended, as a hand counts it there: which way belongs to what was turned, never to what was not. */
import { expect, it, vi } from 'vitest';
import { sampleOf } from '../parts/markup.ts';

const page = { documentElement: { dataset: {} }, addEventListener: () => undefined };
vi.stubGlobal('document', page);
vi.stubGlobal('addEventListener', page.addEventListener);
vi.stubGlobal('location', { hash: '' });
const { placesNear, placeWord } = await import('../../app/state/by-rack.ts');

it.each([
  ['threaded-rod', {}, 1 / 12, 'longer'],
  ['eccentric-cam', { at: 'inner4' }, 7.5, 'outboard'],
] as const)(
  'of a short move of a %s the places beside it have one way, and where it stood has none',
  (kind, fields, to, way) => {
    const adjuster = sampleOf(kind, fields);
    const move = { corner: 'LR', from: 0, to } as const;
    const units = placesNear(adjuster, move).map((at) => [at, placeWord(adjuster, move, at).unit]);
    expect(units.length).toBeGreaterThan(1);
    expect(units).toEqual(units.map(([at]) => [at, at === 0 ? '' : way]));
    expect(units[0]?.[0]).toBe(0);
  },
);
