/** Where an adjuster stands, typed as it is said: read back to the same place in any shop, refused in words. */
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { adjusterKinds } from '../../core/adjuster/catalogue.ts';
import { type Adjuster, adjusterPositions } from '../../core/index.ts';
import { wordsOf } from '../../core/words/catalogue.ts';
import { sampleOf } from '../parts/markup.ts';

const page = { documentElement: { dataset: {} }, addEventListener: () => undefined };
vi.stubGlobal('document', page);
vi.stubGlobal('addEventListener', page.addEventListener);
vi.stubGlobal('location', { hash: '' });
const { records } = await import('../../app/state/records.ts');
const { placeParts, typedPlace } = await import('../../app/state/typed-place.ts');

const shops = [
  { length: 'mm', angle: 'degrees', decimal: '.' },
  { length: 'inch', angle: 'degrees-minutes', decimal: ',' },
] as const;
const inShop = (value: object) => {
  records.value = { ...records.value, preferences: [{ id: 'units', value, changed: '2026-01-01' }] };
};
const ALL: readonly Adjuster[] = [
  ...Object.keys(adjusterKinds).map((kind) => sampleOf(kind)),
  sampleOf('eccentric-cam', { turns: 'clockwise', marks: 7, range: [-360, 360] }),
  sampleOf('offset-sleeve', { degrees: [0, 0.5, 1], reference: 'plain' }),
  sampleOf('effect-table', { positions: undefined, perStep: { camber: 0.1 }, range: [-6, 6], reference: 0 }),
];
const SHIMS = { sizes: [1, 1.5, 3], max: 12, reference: 6 };

beforeEach(() => inShop(shops[0]));

describe.each(shops)('in a shop of $length', (shop) => {
  it.each(ALL.map((adjuster, i) => [`${adjuster.kind} ${i}`, adjuster] as const))('%s', (_, given) => {
    inShop(shop);
    const adjuster = given.kind === 'shim-pack' ? { ...given, ...SHIMS } : given;
    for (const position of adjusterPositions(adjuster)) {
      const read = typedPlace(
        adjuster,
        placeParts(adjuster, position).map(({ text }) => text),
      );
      const back = 'position' in read ? read.position : read;
      if (typeof position === 'number') expect(back).toBeCloseTo(position, 2);
      else expect(back).toBe(position);
    }
  });
});

describe('a hand types', () => {
  const read = (adjuster: Adjuster, ...texts: string[]) => typedPlace(adjuster, texts);

  it('turns and flats, six flats a turn, either way from 0', () => {
    const rod = sampleOf('threaded-rod');
    expect(read(rod, '1', '3')).toEqual({ position: 1.5 });
    expect(read(rod, '−1', '3')).toEqual({ position: -1.5 });
    expect(read(rod, '−0', '3')).toEqual({ position: -0.5 });
    expect(read(rod, '', '2')).toEqual({ position: expect.closeTo(1 / 3, 6) });
    expect(placeParts(rod, -0.5).map(({ text }) => text)).toEqual(['−0', '3']);
  });

  it('marks of a cam, 24 to a full turn, with either minus and either point', () => {
    const cam = sampleOf('eccentric-cam', { marks: 24 });
    for (const text of ['-2', '−2', ' -2.0 ', '−2,0']) expect(read(cam, text)).toEqual({ position: -30 });
  });

  it('a number of a cam as it is stamped, and no other', () => {
    const cam = sampleOf('indexed-cam');
    expect(read(cam, ' 5 ')).toEqual({ position: '5' });
    expect(read(cam, '9')).toMatchObject({ is: 'one-of' });
  });

  it('a taper and where it is turned to; none of it is none', () => {
    const shim = sampleOf('wedge-shim', { degrees: [0.5] });
    expect(read(shim, '0.5', '45')).toEqual({ position: '0.5@45' });
    expect(read(shim, '', '')).toEqual({ position: 'none' });
    expect(read(shim, '0.5', '')).toMatchObject({ is: 'taper' });
    expect(read(shim, '0.75', '45')).toMatchObject({ is: 'taper' });
  });

  it('inches as on a rule where the shop has them', () => {
    inShop({ ...shops[0], length: 'inch' });
    expect(read(sampleOf('shim-pack', SHIMS), '1/8')).toEqual({ position: 3.175 });
  });

  it('what is nothing, or beyond its ends: it is told what is allowed, in the words of the field', () => {
    const words = wordsOf();
    const told = (adjuster: Adjuster, ...texts: string[]) => {
      const rule = read(adjuster, ...texts);
      if ('position' in rule) throw new Error(`${texts} was taken`);
      return words.refusal({ value: texts.join(' '), rule });
    };
    expect(told(sampleOf('eccentric-cam', { marks: 24 }), '7')).toContain('from −6 to 6 marks');
    expect(told(sampleOf('threaded-rod'), '9', '0')).toContain('from −6 to 6 turns');
    for (const adjuster of ALL) {
      for (const text of ['', 'x', '--', '1e9', 'NaN'])
        expect(told(adjuster.kind === 'shim-pack' ? { ...adjuster, ...SHIMS } : adjuster, 'x', text)).not.toMatch(
          /undefined|NaN but|\[object/,
        );
    }
  });
});
