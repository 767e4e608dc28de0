/** Boxes of states, against the states that they hold. */
import { describe, expect, it } from 'vitest';
import type { Candidates } from '../../../../core/plan/search/candidates.ts';
import { type Box, StateTree } from '../../../../core/plan/search/state-tree.ts';
import { madeSearch, randomSearch, realOf, SEEDS, treesOf } from '../../../tools/made-search.ts';
import { madeStates, madeTerm } from '../../../tools/made-states.ts';

describe('boxes', () => {
  it.each(SEEDS)('seed %i: hold what their states have, and no more', (seed) => {
    const slack = 0.02;
    const search = randomSearch(seed, { slack });
    const { tangents, boxes, statesIn } = treesOf(search, seed % 2 === 0);
    boxes.forEach((all, a) => {
      const { states, costs } = search.candidates[a] as Candidates;
      const tilted = search.candidates[a]?.tilted(tangents.slopes[a] as Float64Array) as Float64Array;
      expect(all.filter(({ first, last }) => last - first === 1)).toHaveLength(realOf(states).length);
      for (const box of all) {
        const inside = statesIn(box, a);
        const of = (list: ArrayLike<number>) => inside.map((state) => list[state] as number);
        expect(box.cost).toBe(Math.min(...of(costs)));
        expect(box.tilted).toBe(Math.min(...of(tilted)));
        expect(box.effort).toBe(Math.min(...of(states.effort)));
        expect(box.mostEffort).toBe(Math.max(...of(states.effort)));
        for (let k = 0; k < states.stride; k++) {
          const values = inside.map((state) => states.near(state)[k] as number);
          expect(box.low[k]).toBe(Math.min(...values) - slack);
          expect(box.high[k]).toBe(Math.max(...values) + slack);
        }
      }
    });
  });

  it.each(SEEDS)('seed %i: are parted in the middle of what is widest in half windows, or by minutes first', (seed) => {
    const search = randomSearch(seed, { count: 20 });
    for (const effortFirst of [false, true]) {
      const { trees, boxes, statesIn } = treesOf(search, effortFirst);
      boxes.forEach((all, a) => {
        const [tree, { weights, states }] = [trees[a] as StateTree, search.candidates[a] as Candidates];
        for (const box of all) {
          const widths = weights.map((weight, k) => weight * ((box.high[k] ?? NaN) - (box.low[k] ?? NaN)));
          const single = box.last - box.first === 1;
          const open = effortFirst && !single && box.mostEffort > box.effort;
          expect(tree.size(box)).toBe(single ? -1 : open ? Number.POSITIVE_INFINITY : Math.max(...widths));
          if (single) continue;
          const halves = tree.split(box);
          expect(tree.split(box)).toBe(halves);
          expect([halves[0].first, halves[0].last, halves[1].last]).toEqual([box.first, halves[1].first, box.last]);
          const [left, right] = halves.map((half) => statesIn(half, a)) as [number[], number[]];
          expect(Math.min(left.length, right.length)).toBeGreaterThan(0);
          const k = widths.indexOf(Math.max(...widths));
          const middle = ((box.low[k] ?? NaN) + (box.high[k] ?? NaN)) / 2;
          const goesFirst = (state: number): boolean =>
            open ? states.effort[state] === box.effort : (states.near(state)[k] ?? NaN) <= middle;
          expect(left.every(goesFirst)).toBe(true);
          expect(right.some(goesFirst)).toBe(false);
        }
      });
    }
  });

  it('of states with the same angles are halved', () => {
    const numbers = Array.from({ length: 7 }, () => [0, 0, 0.5, 0]);
    const states = [madeStates({ corner: 'LF', numbers, minutes: numbers.map((_, i) => i) })];
    const search = madeSearch(states, [madeTerm([{ corner: 'LF', angle: 2, factor: 1 }], 0, 1)]);
    const tree = new StateTree(search.candidates[0] as Candidates, new Float64Array(7), { effortFirst: false });
    const [first, second] = tree.split(tree.root as Box);
    expect([first.last - first.first, second.last - second.first]).toEqual([3, 4]);
    expect(tree.state(second)).toBe(3);
  });

  it('there is none without states', () => {
    const states = [madeStates({ corner: 'LF', numbers: [[2, 0, 0, 0]], minutes: [0] })];
    const search = madeSearch(states, [madeTerm([{ corner: 'LF', angle: 0, factor: 1 }], 0, 1)], {
      inWindow: true,
      effortFirst: false,
    });
    const [only] = search.candidates;
    expect(new StateTree(only as Candidates, new Float64Array(1), { effortFirst: false }).root).toBeUndefined();
    expect(only?.cheapest).toBe(-1);
  });
});
