/** The search against every combination of states, tried one by one. */
import { describe, expect, it } from 'vitest';
import type { Corner } from '../../../../core/contract.ts';
import { search } from '../../../../core/plan/search/branch-and-bound.ts';
import type { Goal } from '../../../../core/plan/search/goal.ts';
import type { StateSpace } from '../../../../core/plan/states/state-space.ts';
import type { Term } from '../../../../core/plan/terms.ts';
import { everyChoice, madeTie, randomStates, randomTerms, scoreOf } from '../../../tools/made-states.ts';
import { between, oneOf, stream } from '../../../tools/random-cars.ts';

const GOALS: readonly Goal[] = [
  { inWindow: false, effortFirst: false },
  { inWindow: true, effortFirst: false },
  { inWindow: true, effortFirst: true },
  { inWindow: false, effortFirst: true },
  { inWindow: true, effortFirst: false, maxEffort: 13.1 },
  { inWindow: false, effortFirst: false, maxEffort: 10 },
];

/** The least minutes, if they come first, and the least distance with them; none where no combination will do. */
function bestOf(states: readonly StateSpace[], terms: readonly Term[], goal: Goal) {
  const { inWindow, effortFirst, maxEffort = Number.POSITIVE_INFINITY, extra } = goal;
  const all = everyChoice(states)
    .map((chosen) => {
      const { distance, ...score } = scoreOf(terms, states, chosen);
      const more = chosen.reduce((sum, state, a) => sum + (extra?.[a]?.(state) ?? 0), 0);
      return { ...score, distance: distance + more };
    })
    .filter((one) => one.allowed && (!inWindow || one.inWindow) && one.effort <= maxEffort + 1e-4);
  const least = Math.min(...all.map(({ effort }) => effort));
  const kept = effortFirst ? all.filter(({ effort }) => effort < least + 1e-4) : all;
  return all.length === 0 ? undefined : { effort: least, distance: Math.min(...kept.map(({ distance }) => distance)) };
}

function expectBest(states: readonly StateSpace[], terms: readonly Term[], goal: Goal): boolean {
  const found = search(states, terms, goal);
  const best = bestOf(states, terms, goal);
  expect(found !== undefined).toBe(best !== undefined);
  if (!found || !best) return false;
  const own = scoreOf(terms, states, found.states);
  const more = found.states.reduce((sum, state, a) => sum + (goal.extra?.[a]?.(state) ?? 0), 0);
  expect(own.allowed && (own.inWindow || !goal.inWindow)).toBe(true);
  expect(found.distance).toBeCloseTo(own.distance + more, 9);
  expect(found.effort).toBeCloseTo(own.effort, 4);
  expect(found.distance).toBeCloseTo(best.distance, 9);
  if (goal.effortFirst) expect(found.effort).toBeCloseTo(best.effort, 4);
  return true;
}

const WHEELS: readonly Corner[] = ['LF', 'RF', 'LR'];
const SEEDS = Array.from({ length: 24 }, (_, i) => i + 1);

describe.each(GOALS)('the best by %o', (goal) => {
  it('is that of all combinations of three wheels, and none is found where there is none', () => {
    let found = 0;
    for (const seed of SEEDS) {
      const random = stream(seed * 13);
      const states = WHEELS.map((corner) => randomStates(random, corner, 9, seed % 2 ? 0 : 0.02));
      const ties = seed % 3 ? [] : [madeTie('LF', 'RF', oneOf(random, [0, 1]))];
      const terms = [...randomTerms(random, WHEELS, seed % 4 ? 0.9 : 0.2), ...ties];
      if (expectBest(states, terms, goal)) found++;
    }
    expect(found).toBeGreaterThan(3);
    expect(found).toBeLessThanOrEqual(goal.inWindow ? SEEDS.length - 1 : SEEDS.length);
  });

  it('is that of all combinations where a state costs something beside its angles', () => {
    for (const seed of SEEDS.slice(0, 6)) {
      const random = stream(seed * 17);
      const states = WHEELS.slice(0, 2).map((corner) => randomStates(random, corner, 20));
      const costs = states.map(({ count }) => Float64Array.from({ length: count }, () => between(random, 0, 4)));
      const extra = costs.map((own) => (state: number) => own[state] ?? Number.NaN);
      expectBest(states, randomTerms(random, WHEELS.slice(0, 2), 0.8), { ...goal, extra });
    }
  });
});

it('is that of all combinations of two wheels of many states that pull on one another hard', () => {
  for (const seed of [1, 2]) {
    const random = stream(seed * 19);
    const states = WHEELS.slice(0, 2).map((corner) => randomStates(random, corner, 120, 1e-6));
    const terms = randomTerms(random, WHEELS.slice(0, 2), 1).map((term, i) => {
      const half = i < 4 ? 3 : 0.02;
      const { aim } = term.window;
      return { ...term, window: { low: aim - half, aim, high: aim + half, half } };
    });
    for (const goal of [GOALS[0], { inWindow: false, effortFirst: false, maxEffort: 12 }]) {
      expectBest(states, terms, goal as Goal);
    }
  }
});

it('of equally near ones is the one that takes less work', () => {
  for (const seed of SEEDS) {
    const random = stream(seed * 23);
    // Each angle stands for several states of other minutes.
    const states = WHEELS.slice(0, 2).map((corner) => {
      const own = randomStates(random, corner, 12);
      for (let state = 0; state < own.count; state++) {
        const from = state - (state % 4);
        own.values.copyWithin(state * own.stride, from * own.stride, (from + 1) * own.stride);
      }
      return { ...own, exact: own.near } as StateSpace;
    });
    const terms = randomTerms(random, WHEELS.slice(0, 2), 1);
    const found = search(states, terms, { inWindow: false, effortFirst: false });
    const scores = everyChoice(states).map((chosen) => scoreOf(terms, states, chosen));
    const near = Math.min(...scores.filter(({ allowed }) => allowed).map(({ distance }) => distance));
    const least = Math.min(...scores.filter(({ distance }) => distance < near + 1e-12).map(({ effort }) => effort));
    expect(found?.effort).toBeCloseTo(least, 4);
  }
});

it.each([GOALS[0], GOALS[4]] as Goal[])('by %o solves few of very many combinations in full', (goal) => {
  const random = stream(31);
  let solved = 0;
  const counted = (own: StateSpace): StateSpace =>
    ({
      ...own,
      exact: (state: number) => {
        solved++;
        return own.exact(state);
      },
    }) as StateSpace;
  const states = WHEELS.slice(0, 2).map((corner) => counted(randomStates(random, corner, 400)));
  // What each wheel would have and what both should have together are far apart.
  const terms = randomTerms(random, WHEELS.slice(0, 2), 1).map((term, i) => {
    const half = i < 4 ? 2 : 0.2;
    const { aim } = term.window;
    return { ...term, window: { low: aim - half, aim, high: aim + half, half } };
  });
  expect(search(states, terms, { ...goal, inWindow: false })).toBeDefined();
  expect(solved).toBeLessThan(100);
});
