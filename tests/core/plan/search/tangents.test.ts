/** Shared windows split over the wheels: an identity, and the mixture that a closed form gives. */
import { describe, expect, it } from 'vitest';
import type { Goal } from '../../../../core/plan/search/goal.ts';
import { relax } from '../../../../core/plan/search/relaxation.ts';
import { tangentsAt } from '../../../../core/plan/search/tangents.ts';
import { termAt } from '../../../../core/plan/states/indexed-term.ts';
import type { StateSpace } from '../../../../core/plan/states/state-space.ts';
import { madeSearch, NEAREST, randomSearch, SEEDS, WHEELS } from '../../../tools/made-search.ts';
import { everyChoice, madeStates, madeTerm } from '../../../tools/made-states.ts';
import { between } from '../../../tools/random-cars.ts';

describe('tangents', () => {
  it.each(SEEDS)('seed %i: with what is left of each parabola they are what the shared windows cost', (seed) => {
    const slack = seed % 2 ? 0 : 0.03;
    const { random, states, candidates, shared } = randomSearch(seed, { slack, count: 5 });
    const meetings = shared.map(() => between(random, -1, 1));
    const tangents = tangentsAt(meetings, shared, candidates);
    const tilted = candidates.map((own, a) => own.tilted(tangents.slopes[a] ?? new Float64Array()));
    for (const chosen of everyChoice(states)) {
      if (!chosen.every((state, a) => candidates[a]?.order.includes(state))) continue;
      const numbers = chosen.map((state, a) => (states[a] as StateSpace).near(state));
      let [cost, split] = [0, tangents.constant];
      shared.forEach((one, t) => {
        const { aim, half } = one.term.window;
        const value = termAt(one, numbers);
        cost += ((value - aim) / half) ** 2;
        split += ((value - (meetings[t] ?? NaN)) / half) ** 2;
      });
      let allowed = 0;
      chosen.forEach((state, a) => {
        cost += candidates[a]?.costs[state] ?? NaN;
        split += tilted[a]?.[state] ?? NaN;
        for (const slope of tangents.slopes[a] ?? []) allowed += Math.abs(slope) * slack;
      });
      expect(split + allowed).toBeCloseTo(cost, 8);
    }
  });

  it.each([0.1, 0.5, 1, 3])('meet where two wheels of two states settle that may mix them: %d', (gain) => {
    // Toe 0 or 1 of each wheel, the second one dearer; a sum of 2 is wanted. Mixing both alike by x costs
    // 2·gain·x + (2x − 2)²: least at x = 1 − gain/4, but no more than 1.
    const corners = WHEELS.slice(0, 2);
    const states = corners.map((corner) =>
      madeStates({ corner, minutes: [0, 5], numbers: [0, 1].map((toe) => [0, 0, toe, 0]) }),
    );
    const wanted = madeTerm(
      corners.map((corner) => ({ corner, angle: 2, factor: 1 })),
      2,
      1,
    );
    const goal: Goal = { ...NEAREST, extra: corners.map(() => (state: number) => gain * state) };
    const { candidates, shared } = madeSearch(states, [wanted], goal);
    const { meetings } = relax(candidates, shared);
    const x = 1 - gain / 4;
    const at = (x2: number) => 2 * gain * x2 + (2 * x2 - 2) ** 2;
    const mixed = (meetings[0] ?? NaN) / 2;
    expect(mixed).toBeGreaterThanOrEqual(0);
    expect(at(mixed)).toBeLessThan(at(x) + 0.03);
  });
});
