/** What would free a car that cannot meet its windows: each way is truly built, planned again, and taken back a little. */

import { describe, expect, it } from 'vitest';
import type { Adjuster, CarSettings, Corner, PlanRequest, Position, Reading, Vec3 } from '../../core/contract.ts';
import { axleOf } from '../../core/corners.ts';
import {
  adjusterKinds,
  adjusterPositions,
  type FreeChange,
  planMoves,
  predictReading,
  type Stuck,
  whatWouldFree,
} from '../../core/index.ts';
import { adjustersAt, randomReading, randomSpec } from '../tools/brute-force.ts';
import { randomCar, stream } from '../tools/random-cars.ts';
import { remembered } from '../tools/remembered.ts';
import { shortOrLong, upTo } from '../tools/seeds.ts';
import { seenOf } from '../tools/seen.ts';

const SEEDS = shortOrLong([1, 2, 5, 16, 18, 20, 27, 35, 37, 39, 42, 43, 47, 51, 52], upTo(56));

/** Found further off than most adjusters go, now by little and now by much. */
function request(seed: number): PlanRequest {
  const random = stream(seed + 4100);
  const car = randomCar(random, 2);
  const spec = { front: randomSpec(random, true), rear: randomSpec(random, false) };
  return { car, spec, reading: randomReading(random, 0.8 + 0.7 * (seed % 4)), settings: {} };
}

const AWAY: Readonly<Record<string, Vec3>> = {
  forward: [1, 0, 0],
  rearward: [-1, 0, 0],
  outboard: [0, 1, 0],
  inboard: [0, -1, 0],
  up: [0, 0, 1],
  down: [0, 0, -1],
};
const OTHER: Readonly<Record<Corner, Corner>> = { LF: 'RF', RF: 'LF', LR: 'RR', RR: 'LR' };

/** What stands for the part that is bought: up to `by` of it, in the steps in which it was sought. */
function part(own: Adjuster, { further }: FreeChange, by: number): Adjuster {
  const { unit, way = '' } = further ?? {};
  const id = `${own.id} part`;
  if (unit === 'turns') {
    const range = way === 'longer' ? [0, by] : [-by, 0];
    return { id, kind: 'threaded-rod', links: own.links, lead: own.lead, stepTurns: 0.25, range, reference: 0 };
  }
  const along = AWAY[way] as Vec3;
  const isPack = own.kind === 'shim-pack';
  const direction = own.direction as Vec3;
  const dot = isPack ? along.reduce((sum, x, i) => sum + x * (direction[i] as number), 0) : 1;
  const line = isPack ? (direction.map((x) => x * Math.sign(dot)) as unknown as Vec3) : along;
  return { id, kind: 'slide', at: own.at, direction: line, step: isPack ? 1.5 : 0.5, range: [0, by], reference: 0 };
}

/** Where the adjuster stands when the part is fitted: at its end that way; a cam may also stay as it is. */
function stands(own: Adjuster, { further }: FreeChange): Position[] {
  const all = adjusterPositions(own);
  const along = (position: Position): number => {
    const effect = adjusterKinds[own.kind]?.effect(own, position, { kind: 'unknown', points: {}, camber: 0, toe: 0 });
    if (further?.way === 'longer') return position as number;
    if (further?.way === 'shorter') return -(position as number);
    const line = part(own, { further } as FreeChange, 1).direction as Vec3;
    return (effect?.shift?.[own.at] ?? [0, 0, 0]).reduce((sum, x, i) => sum + x * (line[i] as number), 0);
  };
  const most = Math.max(...all.map(along));
  const last = all.filter((position) => along(position) > most - 1e-6);
  return own.kind === 'shim-pack' || own.kind === 'threaded-rod' ? last : [...last, own.reference];
}

/** Whether the car is all in its window with the parts fitted, `share` of what was said. */
function meets(given: PlanRequest, changes: readonly FreeChange[], share: readonly number[]): boolean {
  let requests = [given];
  changes.forEach((change, i) => {
    const { corner, adjuster } = change;
    const axle = axleOf(corner);
    const own = adjustersAt(given.car, corner).find(({ id }) => id === adjuster) as Adjuster;
    const bought = part(own, change, (change.further?.by ?? Number.NaN) * (share[i] as number));
    const fitted = { ...bought, id: `${bought.id} ${i}` };
    requests = requests.flatMap((asked) =>
      stands(own, change).map((position) => {
        const { car, reading, settings, locked = [] } = asked;
        const to: CarSettings = { ...settings, [corner]: { ...settings[corner], [adjuster]: position } };
        const adjusters = [...car[axle].adjusters, fitted];
        const held = [
          { corner, adjuster },
          { corner: OTHER[corner], adjuster: fitted.id },
        ];
        return {
          ...asked,
          car: { ...car, [axle]: { ...car[axle], adjusters } },
          settings: to,
          reading: predictReading(car, reading, settings, to),
          locked: [...locked, ...held],
        };
      }),
    );
  });
  return requests.some((asked) => planMoves(asked).inWindow);
}

const stuckOf = remembered((seed: number) => whatWouldFree(request(seed)));

describe('what would free a car that cannot meet its windows', () => {
  it.each(SEEDS)('seed %i: each way does, and a tenth less does not', (seed) => {
    const asked = request(seed);
    const stuck = stuckOf(seed);
    expect(stuck.length === 0).toBe(planMoves(asked).inWindow);
    // The rest of the car is freed by its first way, or left out of what is wanted.
    if (stuck.some(({ ways }) => ways.length === 0)) return;
    stuck.forEach(({ ways }, s) => {
      const rest = stuck.filter((_, k) => k !== s).flatMap((one) => one.ways[0] ?? []);
      for (const way of ways) {
        const all = [...way, ...rest];
        const ones = all.map(() => 1);
        expect(meets(asked, all, ones), JSON.stringify(way)).toBe(true);
        way.forEach((_, i) => {
          const less = ones.map((one, k) => (k === i ? 0.9 : one));
          expect(meets(asked, all, less), `${i} ${JSON.stringify(way)}`).toBe(false);
        });
      }
    });
  });

  it('the cases above hold ways of one adjuster and of two, cars that nothing frees and cars that need nothing', () => {
    const seen = seenOf(['single', 'pair', 'none', 'inWindow'], 2, SEEDS, (seed) => {
      const stuck = stuckOf(seed);
      if (stuck.length === 0) return ['inWindow'];
      if (stuck.some(({ ways }) => ways.length === 0)) return ['none'];
      return stuck.flatMap(({ ways }) => ways.map((way) => (way.length === 1 ? 'single' : 'pair')));
    });
    for (const count of Object.values(seen)) expect(count, JSON.stringify(seen)).toBeGreaterThan(2);
  });

  const SWAPPED = { LF: 'RF', RF: 'LF', LR: 'RR', RR: 'LR' } as const;
  /** Corners and ways in one order, by these names. */
  const plain = (all: readonly Stuck[], names: Readonly<Record<string, string>>) =>
    all
      .flatMap(({ corners, ways }) => [
        corners
          .map((corner) => names[corner] ?? corner)
          .sort()
          .join(),
        ...ways.map((way) =>
          way
            .map(({ corner, ...rest }) => JSON.stringify([names[corner] ?? corner, rest]))
            .sort()
            .join(' + '),
        ),
      ])
      .sort();
  let told = 0;

  it.each(shortOrLong([1, 3, 6, 17, 18, 26, 27], upTo(30)))('seed %i: is the same left and right', (seed) => {
    const { car, reading, spec } = request(seed);
    const same = (own: PlanRequest['spec']['front']) => ({
      ...(own?.camber && { camber: own.camber }),
      ...(own?.caster && { caster: own.caster }),
      totalToe: { low: -0.2, high: 0.4 },
    });
    const even = { front: same(spec.front), rear: same(spec.rear) };
    const mirrored: Reading = {
      LF: reading.RF ?? {},
      RF: reading.LF ?? {},
      LR: reading.RR ?? {},
      RR: reading.LR ?? {},
    };
    const as = whatWouldFree({ car, spec: even, reading, settings: {} });
    const other = whatWouldFree({ car, spec: even, reading: mirrored, settings: {} });
    const isSingle = [...as, ...other].every(({ ways }) => ways.every((way) => way.length === 1));
    if (!isSingle) return;
    told += as.length;
    expect(plain(other, SWAPPED)).toEqual(plain(as, {}));
  });

  it('the cases above hold cars that are stuck', () => {
    expect(told).toBeGreaterThan(5);
  });

  let freed = 0;

  it.each(shortOrLong([1, 16, 21, 31, 43], upTo(56)))(
    'seed %i: an adjuster that was not to be moved is what frees it, where it is that alone',
    (seed) => {
      const random = stream(seed + 70);
      const car = randomCar(random, 2);
      const asked = {
        car,
        spec: { front: { toe: { low: 0, high: 0.2 } } },
        reading: randomReading(random, 0.5),
        settings: {},
      };
      const locked = [{ corner: 'LF', adjuster: 'rod' }] as const;
      if (!planMoves(asked).inWindow || planMoves({ ...asked, locked }).inWindow) return;
      const [stuck, ...more] = whatWouldFree({ ...asked, locked });
      expect(more).toEqual([]);
      expect(stuck?.corners).toEqual(['LF']);
      expect(stuck?.ways[0]).toEqual([{ corner: 'LF', adjuster: 'rod' }]);
      freed++;
    },
  );

  it('the cases above hold cars that such an adjuster frees', () => {
    expect(freed).toBeGreaterThan(3);
  });
});
