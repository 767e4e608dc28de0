/** A good choice found fast, and what it lets the search forget: none may lose the best, and both must be worth something. */
import { describe, expect, it } from 'vitest';
import { descend } from '../../../../core/plan/search/descent.ts';
import { forget } from '../../../../core/plan/search/forgetting.ts';
import { ownCost, randomSearch, realOf, SEEDS, sorted } from '../../../tools/made-search.ts';
import { scoreOf } from '../../../tools/made-states.ts';

describe('the way down', () => {
  it.each(SEEDS)('seed %i: ends where no other state of one wheel is better', (seed) => {
    const search = randomSearch(seed, { count: 12 });
    const chosen = descend(search.candidates, search.shared);
    const cost = (states: readonly number[]) => scoreOf(search.terms, search.states, states).distance;
    search.states.forEach((own, a) => {
      for (const state of realOf(own)) {
        const other = chosen.map((one, i) => (i === a ? state : one));
        expect(cost(other)).toBeGreaterThanOrEqual(cost(chosen) - 1e-9);
      }
    });
    expect(cost(chosen)).toBeLessThanOrEqual(cost(search.candidates.map(({ cheapest }) => cheapest)) + 1e-9);
  });
});

describe('forgetting', () => {
  it.each(SEEDS)(
    'seed %i: keeps whatever could be in a choice as good as the better of two, and nothing else',
    (seed) => {
      const search = randomSearch(seed, { count: 14, half: 0.6 });
      const { candidates, states, shared, terms, costOf } = search;
      const cheapest = candidates.map((own) => own.cheapest);
      const known = [cheapest, descend(candidates, shared)].map((chosen) => scoreOf(terms, states, chosen).distance);
      const leasts = cheapest.map((state, a) => ownCost(search, a, state));
      const before = candidates.map(({ order }) => order.length);
      forget(candidates, shared, costOf);
      candidates.forEach((own, a) => {
        const others = leasts.reduce((sum, least, i) => (i === a ? sum : sum + least), 0);
        const most = Math.min(...known) - others;
        const worth = realOf(own.states).filter((state) => ownCost(search, a, state) <= most + 1e-7);
        expect(sorted(own.order)).toEqual(worth);
      });
      const after = candidates.map(({ order }) => order.length);
      expect(after.reduce((x, y) => x + y)).toBeLessThan(before.reduce((x, y) => x + y));
    },
  );

  it('forgets nothing where no choice is known to do', () => {
    const search = randomSearch(4, { count: 8 });
    const before = search.candidates.map(({ order }) => sorted(order));
    forget(search.candidates, search.shared, () => undefined);
    expect(search.candidates.map(({ order }) => sorted(order))).toEqual(before);
  });

  it('leaves a wheel that has no state alone', () => {
    const search = randomSearch(5, { half: 1e-4, goal: { inWindow: true, effortFirst: false } });
    expect(search.candidates.some(({ cheapest }) => cheapest < 0)).toBe(true);
    forget(search.candidates, search.shared, () => {
      throw new Error('there is nothing to cost');
    });
  });
});
