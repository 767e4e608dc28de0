/** What a choice of boxes costs at the least, against every choice in them. */
import { describe, expect, it } from 'vitest';
import { Bound, type Choice, firstBy } from '../../../../core/plan/search/bound.ts';
import { indexTerm } from '../../../../core/plan/states/indexed-term.ts';
import { NEAREST, randomSearch, SEEDS, treesOf } from '../../../tools/made-search.ts';
import { madeTie, scoreOf } from '../../../tools/made-states.ts';
import { oneOf } from '../../../tools/random-cars.ts';

describe('the bound of a choice of boxes', () => {
  it.each(SEEDS)('seed %i: is never above the best in them, and is the best where they are single states', (seed) => {
    const slack = seed % 2 ? 0 : 0.01;
    const search = randomSearch(seed, { slack, count: 7 });
    const { boxes, statesIn, tangents } = treesOf(search);
    const [plain, tilted] = [new Bound(search.shared, NEAREST), new Bound(search.shared, NEAREST, tangents)];
    let closer = 0;
    for (let i = 0; i < 60; i++) {
      const some = boxes.map((all) => oneOf(search.random, all));
      const inside = some.map(statesIn);
      let choices: number[][] = [[]];
      for (const own of inside) choices = choices.flatMap((chosen) => own.map((state) => [...chosen, state]));
      const scores = choices.map((chosen) => scoreOf(search.terms, search.states, chosen));
      const best = Math.min(...scores.map(({ distance }) => distance));
      const [one, other] = [plain.of(some) as Choice, tilted.of(some) as Choice];
      for (const choice of [one, other]) {
        expect(choice.boxes).toBe(some);
        expect(choice.distance).toBeLessThanOrEqual(best + 1e-9);
        if (slack === 0 && choices.length === 1) expect(choice.distance).toBeCloseTo(best, 9);
        expect(choice.effort).toBeLessThanOrEqual(Math.min(...scores.map(({ effort }) => effort)) + 1e-4);
      }
      // The better of two.
      expect(other.distance).toBeGreaterThanOrEqual(one.distance);
      if (other.distance > one.distance + 1e-6) closer++;
      // Term by term the interval that the boxes allow, by hand.
      const byHand = search.shared.reduce(
        (sum, { term, parts }) => {
          let [low, high] = [term.constant, term.constant];
          for (const { assembly, at, factor } of parts) {
            const ends = [some[assembly]?.low[at], some[assembly]?.high[at]].map((x) => factor * (x ?? NaN));
            low += Math.min(...ends);
            high += Math.max(...ends);
          }
          const nearest = Math.min(high, Math.max(low, term.window.aim));
          return sum + ((nearest - term.window.aim) / term.window.half) ** 2;
        },
        some.reduce((sum, { cost }) => sum + cost, 0),
      );
      expect(one.distance).toBeCloseTo(byHand, 9);
    }
    expect(closer).toBeGreaterThan(0);
  });

  it.each(SEEDS)(
    'seed %i: there is none only where no choice will do, and none for single states that will not',
    (seed) => {
      const search = randomSearch(seed, { count: 7, half: 0.5 });
      const tie = indexTerm(madeTie('LF', 'RF', 0), search.states);
      const { boxes, statesIn } = treesOf(search);
      const seen = { some: 0, none: 0 };
      for (const goal of [{ inWindow: true, effortFirst: false }, { ...NEAREST, maxEffort: 15 }, NEAREST]) {
        const bound = new Bound([...search.shared, tie], goal);
        for (let i = 0; i < 60; i++) {
          const some = boxes.map((all) => oneOf(search.random, i % 3 ? all.slice(-3) : all));
          let choices: number[][] = [[]];
          for (const own of some.map(statesIn))
            choices = choices.flatMap((chosen) => own.map((state) => [...chosen, state]));
          const terms = [...search.shared.map(({ term }) => term), tie.term];
          const does = choices.some((chosen) => {
            const { inWindow, allowed, effort } = scoreOf(terms, search.states, chosen);
            return allowed && (inWindow || !goal.inWindow) && effort <= (goal.maxEffort ?? Number.POSITIVE_INFINITY);
          });
          const found = bound.of(some) !== undefined;
          if (does) expect(found).toBe(true);
          if (choices.length === 1) expect(found).toBe(does);
          if (choices.length === 1) seen[does ? 'some' : 'none']++;
        }
      }
      expect(Math.min(seen.some, seen.none)).toBeGreaterThan(0);
    },
  );

  const choice = (distance: number, effort: number, settled?: readonly number[]): Choice => ({
    boxes: [],
    distance,
    effort,
    ...(settled && { settled }),
  });
  it.each([
    ['nearer', choice(1, 9), choice(2, 3), false],
    ['less work of equally near', choice(1, 3), choice(1, 9), false],
    ['settled of equal ones', choice(1, 3, [0]), choice(1, 3), false],
    ['settled of ones that are equal but for the rounding of minutes', choice(1, 3.00001, [0]), choice(1, 3), false],
    ['less work where that comes first', choice(2, 3), choice(1, 9), true],
    ['nearer of as much work', choice(1, 3.00001), choice(2, 3), true],
    ['settled of equal ones where work comes first', choice(1, 3, [0]), choice(1, 3), true],
  ])('the first to be looked at is the %s', (_, first, second, effortFirst) => {
    const isFirst = firstBy({ inWindow: true, effortFirst });
    expect(isFirst(first, second)).toBe(true);
    expect(isFirst(second, first)).toBe(false);
    expect(isFirst(first, first)).toBe(false);
  });
});
