/** What of an adjuster readings may teach, and that before any it is as unsure as its tolerance says. */
import { describe, expect, it } from 'vitest';
import { adjusterKinds } from '../../../core/adjuster/catalogue.ts';
import { effectTable } from '../../../core/adjuster/effect-table.ts';
import type { Effect } from '../../../core/adjuster/kind.ts';
import type { Adjuster, Position } from '../../../core/contract.ts';

const NOWHERE = { kind: 'unknown', points: {}, camber: 0, toe: 0 };
const ANGLES = ['camber', 'caster', 'toe'] as const;
const table: Adjuster = {
  id: 'kit',
  kind: 'effect-table',
  reference: 'B',
  positions: [
    { label: 'A', camber: -0.5, caster: 0.25, toe: 0 },
    { label: 'B', camber: 0.1, caster: 0, toe: 0.05 },
    { label: 7, camber: 0.75, caster: -0.9 },
  ],
};
const steps: Adjuster = {
  id: 'cam',
  kind: 'effect-table',
  perStep: { camber: 0.2, toe: -0.05 },
  range: [-2, 9],
  reference: 1,
};
const added = (one: Adjuster, from: Position, to: Position) => {
  const [a, b] = [from, to].map((at) => effectTable.effect(one, at, NOWHERE).add);
  return ANGLES.map((angle) => (b?.[angle] ?? 0) - (a?.[angle] ?? 0));
};

describe('a chart', () => {
  it.each<[Adjuster, Position, Position]>([
    [table, 'B', 'A'],
    [table, 'A', 7],
    [steps, 1, 2],
    [steps, 2, 8],
    [steps, 3, -2],
  ])('%j from %s to %s: what may be learned and what stays make up its tolerance', (one, from, to) => {
    const { unsure, tolerance } = effectTable;
    const by = 10;
    const sigma = unsure?.sigma(by, one) ?? 0;
    const asked = added(one, from, to);
    const shares = (unsure?.of ?? []).map((_, i, all) => {
      const off = unsure?.with(
        one,
        all.map((__, j) => (i === j ? sigma : 0)),
      );
      return added(off ?? one, from, to).map((value, a) => value - (asked[a] as number));
    });
    const ofEffects = (effects: readonly Effect[] = []) =>
      effects.map(({ add }) => ANGLES.map((angle) => add?.[angle] ?? 0));
    const squares = (errors: readonly (readonly number[])[]) =>
      ANGLES.map((_, a) => errors.reduce((sum, error) => sum + (error[a] as number) ** 2, 0));
    const made = squares([...shares, ...ofEffects(unsure?.left?.(one, from, to, by))]);
    squares(ofEffects(tolerance.error?.(one, from, to, by))).forEach((told, a) => {
      expect(made[a]).toBeCloseTo(told, 12);
      expect(told).toBeGreaterThan(0);
    });
  });

  it('with nothing off is the chart as printed', () => {
    expect(effectTable.unsure?.with(steps, [0, 0, 0, 0, 0, 0]).perStep).toMatchObject({ camber: 0.2, toe: -0.05 });
  });
});

describe.each(Object.values(adjusterKinds).filter(({ reversed }) => reversed))(
  'a $kind the other way round',
  (kind) => {
    it('does the opposite, and turned once more what it did', () => {
      const sample = { ...kind.sample.adjuster, id: 'x', kind: kind.kind } as Adjuster;
      const given =
        kind === effectTable ? steps : { at: 'upperFront', direction: [0, 1, 0], links: ['tieInner'], ...sample };
      const turned = kind.reversed!(given as Adjuster);
      const { from, to } = kind.step(given as Adjuster);
      const numbers = (one: Adjuster): number[] =>
        [from, to]
          .map((at) => kind.effect(one, at, NOWHERE))
          .flatMap(({ shift = {}, lengthen = {}, add }) => [
            ...Object.values(shift).flat(),
            ...Object.values(lengthen),
            ...(add ? [add.camber, add.caster, add.toe] : []),
          ]);
      const [did, does] = [numbers(given as Adjuster), numbers(turned)];
      expect(Math.hypot(...did)).toBeGreaterThan(0.1);
      does.forEach((value, i) => {
        expect(value).toBeCloseTo(-did[i]!, 12);
      });
      expect(numbers(kind.reversed!(turned))).toEqual(did);
    });
  },
);
