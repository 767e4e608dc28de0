/**
 * What a state costs for not being surely reached, with everything in doubt: points, moves, gauge. Reference: the
 * covariance of that state, worked out whole, and the error function of mathjs.
 */
import { erf } from 'mathjs';
import { describe, expect, it } from 'vitest';
import type { Axle, Car, PlanRequest, Spec } from '../../../../core/contract.ts';
import { ChanceCost } from '../../../../core/plan/chance/chance-cost.ts';
import { problemOf, settingsOf } from '../../../../core/plan/problem.ts';
import { indexTerm, isOwn } from '../../../../core/plan/states/indexed-term.ts';
import { subproblemsOf } from '../../../../core/plan/subproblem.ts';
import { LAYOUTS, rod, shims, stream } from '../../../tools/random-cars.ts';

const axleOf = (kind: string, adjusters: Axle['adjusters'], steered: boolean): Axle => ({
  suspension: { kind, points: LAYOUTS[kind] ?? {}, camber: -1, toe: 0.1, tolerance: 3 },
  adjusters,
  steered,
});
const car: Car = {
  ...{ id: 'c', label: 'c', wheel: { rimDiameter: 430 } },
  front: axleOf('double-wishbone', [shims(stream(3), 'pack', 'upperFront', 2), rod('tie', 'tieInner', 1, 1)], true),
  rear: axleOf('beam-linked', [{ ...rod('lower', 'lowerBody', 1, 1), tolerance: 0.3 }], false),
};
const window = (low: number, high: number) => ({ low, high });
const spec: Spec = {
  front: {
    ...{ camber: window(-1.5, -0.5), caster: window(3, 6), toe: window(-0.1, 0.2) },
    ...{ totalToe: window(-0.1, 0.3), crossCamber: window(-0.4, 0.6), crossCaster: window(-1, 1) },
  },
  rear: { toe: window(-0.1, 0.2), thrustAngle: window(-0.08, 0.1) },
};
const wheel = { camber: -1.1, caster: 4.4, toe: 0.05 };
const request: PlanRequest = {
  ...{ car, spec, settings: {}, gauge: { camber: 0.04, caster: 0.1, toe: 0.02 } },
  reading: { LF: wheel, RF: { ...wheel, camber: -0.9 }, LR: { camber: -1, toe: 0.1 }, RR: { camber: -1, toe: 0.02 } },
};

/** fᵀCf of a square matrix, row by row. */
const form = (f: Float64Array, C: Float64Array): number =>
  f.reduce((sum, a, i) => sum + f.reduce((row, b, k) => row + a * b * C[f.length * i + k]!, 0), 0);

const inside = (low: number, high: number, value: number, sigma: number): number =>
  (erf((high - value) / sigma / Math.SQRT2) - erf((low - value) / sigma / Math.SQRT2)) / 2;

/** Of each state that at most `most` moves lead to: what it costs, and what the whole covariance says that it should. */
function* judged(asked: PlanRequest, most: number) {
  const problem = problemOf(asked);
  for (const { assemblies, states, terms } of subproblemsOf(problem)) {
    const indexed = terms.map((term) => indexTerm(term, states));
    for (const [a, own] of states.entries()) {
      const assembly = assemblies[a]!;
      const uncertainty = problem.uncertainty.get(assembly)!;
      const from = settingsOf(assembly, problem.now);
      const cost = new ChanceCost(own, indexed, a, uncertainty, from);
      const gauge = uncertainty.covariance(from);
      for (let state = 0; state < own.count; state++) {
        const to = own.settings(state);
        const moves = to.flatMap((side, s) => Object.keys(side).filter((id) => side[id] !== from[s]?.[id])).length;
        if (moves > most) continue;
        const covariance = uncertainty.covariance(to);
        let wanted = 0;
        for (const one of indexed.filter(({ parts }) => parts.some(({ assembly }) => assembly === a))) {
          const { low, high, half } = one.term.window;
          const row = new Float64Array(uncertainty.size);
          for (const { assembly, at, factor } of one.parts) if (assembly === a) row[at]! += factor;
          if (isOwn(one)) {
            const value = row.reduce((sum, f, k) => sum + f * own.values[state * own.stride + k]!, one.term.constant);
            wanted -= 2 * Math.log(Math.max(1e-6, inside(low, high, value, Math.sqrt(form(row, covariance)))));
          } else {
            wanted += (form(row, covariance) - form(row, gauge)) / half ** 2;
          }
        }
        yield { told: cost.cost(state), wanted, moves };
      }
    }
  }
}

describe.each(['centreline', 'thrust-line'] as const)(
  'of a whole car read against its %s, a state costs',
  (toeReference) => {
    const asked = { ...request, reading: { ...request.reading, toeReference } };

    it('what its doubt is worth: windows of its own by their chance, those that tie it by their share', () => {
      let seen = 0;
      for (const { told, wanted } of judged(asked, 1)) {
        expect(told).toBeCloseTo(wanted, 5);
        seen++;
      }
      expect(seen).toBeGreaterThan(12);
    });

    it('with two moves what both add, to first order', () => {
      let seen = 0;
      for (const { told, wanted, moves } of judged(asked, 2)) {
        if (moves < 2) continue;
        expect(Math.abs(told - wanted)).toBeLessThan(0.03 * Math.max(1, wanted));
        seen++;
      }
      expect(seen).toBeGreaterThan(8);
    });
  },
);
