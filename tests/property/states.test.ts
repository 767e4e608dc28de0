/** Interpolated states against full solves: none is further off than the planner allows for. */
import { describe, expect, it } from 'vitest';
import type { Corner, PlanRequest, Window } from '../../core/contract.ts';
import { problemOf } from '../../core/plan/problem.ts';
import { subproblemsOf } from '../../core/plan/subproblem.ts';
import { ANGLES_A_WHEEL } from '../../core/pose/mechanism.ts';
import { carOf, FAMILIES, type Family } from '../bench/rounds/families.ts';
import { scattered } from '../bench/rounds/truth.ts';
import { stream } from '../tools/random-cars.ts';
import { shortOrLong, upTo } from '../tools/seeds.ts';

/** mm that the cars of a family differ from one another by. */
const VARIETY = 25;
const EVERY = 7;

function request(family: Family, seed: number): PlanRequest {
  const random = stream(seed);
  const [left, right] = [0, 1].map(() => scattered(family.suspension, random, VARIETY));
  const [l, r] = family.corners;
  const window: Window = { low: -1, high: 1 };
  const reading: Partial<Record<Corner, object>> = { [l]: { camber: 1, toe: 1 }, [r]: { camber: -1, toe: -1 } };
  const spec = { [l === 'LF' ? 'front' : 'rear']: { camber: window, toe: window } };
  return { car: carOf(family, left as never, right as never), spec, reading, settings: {} };
}

const SEEDS = shortOrLong(upTo(3), upTo(8));

describe.each(FAMILIES)('the states of a corner, $name', (family) => {
  let interpolated = 0;

  it.each(SEEDS)('seed %i: each within its slack of a full solve', (seed) => {
    for (const { states } of subproblemsOf(problemOf(request(family, seed)))) {
      for (const own of states) {
        let most = 0;
        for (let state = 0; state < own.count; state += EVERY) {
          const exact = own.exact(state);
          for (let k = 0; k < ANGLES_A_WHEEL; k++) {
            const off = Math.abs((own.values[state * own.stride + k] ?? Number.NaN) - (exact[k] ?? Number.NaN));
            if (off > most) most = off;
          }
        }
        expect(most).toBeLessThan(own.slack);
        if (most > 1e-8) interpolated++;
      }
    }
  });

  it('the cases above hold corners that were interpolated', () => {
    expect(interpolated).toBeGreaterThan((SEEDS.length * 3) / 2);
  });
});
