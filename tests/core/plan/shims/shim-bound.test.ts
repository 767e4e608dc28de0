/** Which states the drawer may serve, against the judge that tries every stack. */

import { describe, expect, it } from 'vitest';
import type { Adjuster, Corner, PlanRequest } from '../../../../core/contract.ts';
import { problemOf } from '../../../../core/plan/problem.ts';
import { ShimBound } from '../../../../core/plan/shims/shim-bound.ts';
import { subproblemsOf } from '../../../../core/plan/subproblem.ts';
import { judgeOf } from '../../../tools/drawer.ts';
import { stream } from '../../../tools/random-cars.ts';
import { drawerOf, request, SEEDS } from '../../../tools/shim-request.ts';

describe('the drawer as the search sees it', () => {
  it.each(SEEDS)('seed %i: whole classes by the least that each must use; single ones exactly', (seed) => {
    const asked: PlanRequest = {
      ...request(seed, 3),
      locked: [
        ...(['LR', 'RR'] as const).map((corner) => ({ corner, adjuster: 'only' })),
        ...(seed % 3 ? [] : [{ corner: 'RF' as const, adjuster: 'second' }]),
      ],
    };
    const drawer = drawerOf(asked);
    const judge = judgeOf(asked);
    const subproblem = subproblemsOf(problemOf(asked), drawer).find(({ shimBound }) => shimBound);
    if (!subproblem) {
      expect(drawer.packs).toEqual([]);
      return;
    }
    const { states, assemblies } = subproblem;
    const bound = new ShimBound(drawer, states);
    const random = stream(seed);
    const settingsOf = (chosen: readonly number[]) =>
      Object.fromEntries(
        assemblies.map(({ corners }, a) => [corners[0] as Corner, states[a]?.settings(chosen[a] ?? -1)[0] ?? {}]),
      );
    const any = (count: number) => Math.floor(random() * count);
    for (let i = 0; i < 80; i++) {
      const chosen = states.map(({ count }) => any(count));
      const single = chosen.map((state, a) => bound.assemblies[a]?.use(Uint32Array.of(state)));
      const served = judge(settingsOf(chosen));
      expect(bound.serves(chosen)).toBe(served);
      expect(bound.mayServe(single.flatMap((use) => use ?? []))).toBe(served);
      const several = states.map(({ count }, a) => [chosen[a] ?? 0, any(count), any(count)]);
      const uses = several.flatMap((own, a) => bound.assemblies[a]?.use(Uint32Array.from(own)) ?? []);
      uses.forEach(({ first, last, least }, a) => {
        const classes = several[a]?.map((state) => bound.assemblies[a]?.classes[state] ?? Number.NaN) ?? [];
        expect([first, last]).toEqual([Math.min(...classes), Math.max(...classes)]);
        least.forEach((amount, k) => {
          const each = several[a]?.map(
            (state) => bound.assemblies[a]?.use(Uint32Array.of(state)).least[k] ?? Number.NaN,
          );
          expect(amount).toBe(Math.min(...(each ?? [])));
        });
      });
      // Never out where some choice can be served.
      if (served) expect(bound.mayServe(uses)).toBe(true);
    }
  });

  it('sees that there are not shims enough for any of several', () => {
    const pack = (id: string, at: string): Adjuster => ({
      id,
      kind: 'shim-pack',
      at,
      direction: [0, 1, 0],
      sizes: [1],
      max: 6,
      reference: 1,
    });
    const base = request(1);
    const front = { ...base.car.front, adjusters: [pack('first', 'upperFront'), pack('second', 'upperRear')] };
    const rear = { ...base.car.rear, adjusters: [pack('only', 'upperFront')] };
    const asked: PlanRequest = { ...base, car: { ...base.car, front, rear }, drawer: [{ size: 1, count: 3 }] };
    const drawer = drawerOf(asked);
    const states = subproblemsOf(problemOf(asked), drawer)[0]?.states ?? [];
    const bound = new ShimBound(drawer, states);
    // Seven shims in all: no window is about the rear, so that its two stay where they are. So many or more on each side:
    const uses = (...least: readonly number[]) =>
      least.flatMap((most, a) => {
        const own = states[a];
        if (!own) return [];
        const some = Array.from({ length: own.count }, (_, state) => state).filter((state) => {
          const { first, second } = own.settings(state)[0] as { first: number; second: number };
          return first + second >= most;
        });
        return bound.assemblies[a]?.use(Uint32Array.from(some)) ?? [];
      });
    expect([uses(3, 4), uses(4, 4), uses(0, 6), uses(6, 2)].map((one) => bound.mayServe(one))).toEqual([
      true,
      false,
      true,
      false,
    ]);
  });
});
