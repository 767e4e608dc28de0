/**
 * Why a reading is not as predicted: over simulated mishaps of every kind the true cause comes first wherever it can be told,
 * and plain noise is seldom taken for anything else. `npm run bench:explain` prints the whole matrix.
 */
import { describe, expect, it } from 'vitest';
import type { Round } from '../../core/contract.ts';
import { explain, learn } from '../../core/index.ts';
import { carOf, FAMILIES, type Family } from '../bench/rounds/families.ts';
import { CAUSES, mishap } from '../tools/mishaps.ts';
import { shortOrLong } from '../tools/seeds.ts';

const FIRST = 1000;
const SEEDS = Array.from({ length: shortOrLong(2, 20) }, (_, i) => FIRST + i);
const QUIET = Array.from({ length: shortOrLong(8, 100) }, (_, i) => FIRST + i);

describe('of mishaps that can be told', () => {
  const told = { all: 0, right: 0 };

  it.each(CAUSES.filter((one) => one !== 'noise'))('%s comes first', (cause) => {
    const outcomes = FAMILIES.flatMap((_, family) => SEEDS.flatMap((seed) => mishap(cause, family, seed) ?? []));
    const tellable = outcomes.filter(({ canBeTold }) => canBeTold);
    const right = tellable.filter((one) => one.right).length;
    told.all += tellable.length;
    told.right += right;
    if (cause !== 'slipped') expect(tellable.length).toBeGreaterThan(0);
    expect(right).toBeGreaterThanOrEqual(Math.floor(tellable.length * 0.7));
  });

  it('the true one comes first in 85 of 100', () => {
    expect(told.all).toBeGreaterThan(SEEDS.length * FAMILIES.length * 6);
    expect(told.right / told.all).toBeGreaterThan(0.85);
  });
});

it.each(FAMILIES.map(({ name }, family) => [name, family] as const))(
  '%s: noise is seldom taken for anything else',
  (_, family) => {
    const outcomes = QUIET.flatMap((seed) => mishap('noise', family, seed) ?? []);
    expect(outcomes.length).toBe(QUIET.length);
    expect(outcomes.filter(({ right }) => !right).length).toBeLessThanOrEqual(outcomes.length * 0.03);
  },
);

describe('an explanation', () => {
  const [, strut] = FAMILIES as unknown as [Family, Family];
  const car = carOf(strut, strut.suspension, strut.suspension);
  const before: Round = {
    id: 'first',
    reading: { LF: { camber: -0.3, caster: 4.2, toe: 0.1 }, RF: { camber: -0.9, caster: 4.9, toe: 0.06 } },
    settings: {},
  };
  const asked = { LF: { 'in-out': -8, rod: 1 }, RF: { rod: 0.5 } };
  // The plate of the left was left alone, the rods were turned: what the rods do is hardly anything but toe.
  const round: Round = {
    reading: { LF: { camber: -0.31, caster: 4.2, toe: 0.62 }, RF: { camber: -0.9, caster: 4.88, toe: 0.32 } },
    settings: asked,
  };

  it('names the move, says it in a sentence and how the records would be by it', () => {
    const [first, ...others] = explain(car, round, { before });
    expect(first).toMatchObject({
      cause: 'not-made',
      corner: 'LF',
      adjuster: { corner: 'LF', adjuster: 'in-out' },
      asked: { as: 'scale', mm: -8 },
      stands: { as: 'scale', mm: 0 },
      correction: { of: 'moves', stand: [{ corner: 'LF', adjuster: 'in-out', at: 0 }] },
    });
    expect(first?.text).toBe('LF in-out seems not to have been moved, and still to be at 0 mm: look at its mark.');
    expect(first?.probability).toBeGreaterThan(0.5);
    for (const { sigmas } of first?.left ?? []) expect(Math.abs(sigmas)).toBeLessThan(3);
    const shares = others.map(({ probability }) => probability);
    expect([...shares].sort((a, b) => b - a)).toEqual(shares);
    expect((first?.probability ?? 0) + shares.reduce((sum, x) => sum + x, 0)).toBeLessThan(1 + 1e-9);
  });

  it('once the records say so there is nothing left to explain', () => {
    const corrected = { ...round, settings: { ...asked, LF: { 'in-out': 0, rod: 1 } } };
    expect(explain(car, corrected, { before })[0]).toMatchObject({ cause: 'noise', left: expect.any(Array) });
  });

  it('holds it against the newest reading that the car has learned of, where no other is given', () => {
    const model = learn(car, [before]);
    expect(explain(model, round)).toEqual(explain(car, round, { before }));
    expect(() => explain(car, round)).toThrow('before: nothing is not allowed');
    expect(() => explain(car, { ...round, settings: { LF: { bolt: 1 } } }, { before })).toThrow(
      'round.settings.LF.bolt',
    );
  });

  it('finds nothing wrong where nothing was moved and the same was read', () => {
    const again = { ...before, id: 'again' };
    expect(explain(car, again, { before })[0]?.cause).toBe('noise');
  });
});
