/** What was chosen once, read from whatever is on file: what is not as it should be counts as not set, and nothing throws. */
import fc from 'fast-check';
import { beforeEach, describe, expect, it, test } from 'vitest';
import { drawer, gauge, rack, theme, toeReference, units, usualForm } from '../../app/state/preferences.ts';
import { records } from '../../app/state/records.ts';
import { readStores } from '../../core/records/stored-schema.ts';

const NONE = { cars: [], visits: [], readings: [], moves: [], drafts: [], preferences: [] };
const IDS = ['units', 'gauge', 'drawer', 'theme', 'toe-reference', 'total-toe:c', 'toe-reference:c', 'backup', 'rack'];
const given = (id: string, value: unknown): void => {
  records.value = { ...NONE, preferences: [{ id, value }] };
};
const all = () => [units.value, gauge.value, drawer.value, theme.value, toeReference.value, usualForm('c'), rack.value];

beforeEach(() => {
  records.value = NONE;
});

describe('a preference that is not what it should be', () => {
  test.each<[string, unknown]>([
    ['units', 'mm'],
    ['units', null],
    ['units', { angle: 'radians', toe: 7, length: {}, thrust: [], decimal: '', sai: 'yes' }],
    ['gauge', { camber: 'x', caster: 0.05, toe: 0.02 }],
    ['gauge', { camber: Number.NaN, caster: 0.05, toe: 0.02 }],
    ['gauge', { camber: -1, caster: 0.05, toe: 0.02 }],
    ['drawer', { shims: [null] }],
    ['drawer', { counted: 'yes', shims: [{ size: 'x', count: 1 }, { size: 1, count: 0.5 }, 7] }],
    ['drawer', { shims: { size: 1 } }],
    ['theme', 'pink'],
    ['theme', ['dark']],
    ['toe-reference', 'moon'],
    ['total-toe:c', 'true'],
    ['rack', 'two'],
    ['rack', { order: 'zigzag', angle: 4, toe: '2', mm: 1.5 }],
  ])('counts as not set: %s = %j', (id, value) => {
    const usual = all();
    given(id, value);
    expect(all()).toEqual(usual);
  });

  it('takes nothing with it that is right beside it', () => {
    given('rack', { order: 'wheel', angle: 3, toe: 0 });
    expect(rack.value).toEqual({ order: 'wheel', decimals: { angle: 3, toe: 2, mm: 1, inch: 2 }, assumed: false });
    given('units', { angle: 'degrees-minutes', toe: 'feet', sai: true });
    expect(units.value).toMatchObject({ angle: 'degrees-minutes', toe: 'angle', sai: true });
    given('drawer', { counted: true, shims: [null, { size: 1.5, count: 4 }] });
    expect(drawer.value).toEqual({ counted: true, shims: [{ size: 1.5, count: 4 }] });
  });

  it('throws nowhere, whatever it is', () => {
    fc.assert(
      fc.property(fc.constantFrom(...IDS), fc.anything(), (id, value) => {
        given(id, value);
        expect(all()).toHaveLength(7);
        for (const { size, count } of drawer.value.shims) expect(size * count).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});

describe('of a backup', () => {
  const aside = (id: string, value: unknown) =>
    readStores({ ...NONE, preferences: [{ id, value }] }).aside.map(({ id: own }) => own);

  it('one that is known and wrong is set aside, one that is not known comes in whatever it is', () => {
    for (const id of IDS) expect(aside(id, { shims: [null], angle: 1, at: 'x', order: 7 })).toEqual([id]);
    expect(aside('constructor', 7)).toEqual([]);
    expect(aside('of-a-later-version', { any: [null] })).toEqual([]);
  });

  it('what the app itself keeps comes in', () => {
    expect(aside('units', units.value)).toEqual([]);
    expect(aside('rack', { order: rack.value.order, ...rack.value.decimals })).toEqual([]);
    expect(aside('gauge', { camber: 0.02, caster: 0.05, toe: 0.02 })).toEqual([]);
    expect(aside('drawer', { counted: true, shims: [{ size: 1.5, count: 999 }] })).toEqual([]);
    for (const one of ['system', 'light', 'dark', 'high-contrast']) expect(aside('theme', one)).toEqual([]);
    expect(aside('toe-reference', 'thrust-line')).toEqual([]);
    expect(aside('total-toe:c', false)).toEqual([]);
    expect(aside('backup', { at: '2026-01-01T08:00:00.000Z' })).toEqual([]);
  });
});
