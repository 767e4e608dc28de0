/** A corner that takes over its mirror image's table has the table that it would have worked out itself. */
import { describe, expect, it } from 'vitest';
import type { Corner, Settings } from '../../core/contract.ts';
import { adjustersOf } from '../../core/index.ts';
import { compileCar, type Unit } from '../../core/plan/car-model.ts';
import { type Stand, UnitStates } from '../../core/plan/states.ts';
import { statesOf } from '../../core/plan/twins.ts';
import { between, randomCar, stream } from '../tools/random-cars.ts';

const SEEDS = Array.from({ length: 30 }, (_, i) => i + 1);

describe('states of both sides', () => {
  it.each(SEEDS)('seed %i: as each would have them alone', (seed) => {
    const random = stream(seed + 9000);
    const car = randomCar(random, 1);
    const stands = new Map<Corner, Stand>();
    // Every third car stands differently on the right, every third has a seized adjuster there.
    const standOf = (corner: Corner): Stand => {
      const known = stands.get(corner);
      if (known) return known;
      const own = adjustersOf(car, corner);
      const turned: Settings = corner === 'RF' && seed % 3 === 1 ? { rod: 0.5 } : {};
      const current: Settings = { ...Object.fromEntries(own.map(({ id, reference }) => [id, reference])), ...turned };
      const movable = corner === 'RF' && seed % 3 === 2 ? own.slice(1) : own;
      const measured = { camber: between(random, -1, 1), caster: between(random, 2, 4), toe: between(random, -1, 1) };
      stands.set(corner, { measured, current, movable, ties: [] });
      return stands.get(corner) as Stand;
    };
    const units = compileCar(car).slice(0, 2);
    const [, right] = statesOf(units, standOf);
    const alone = new UnitStates(units[1] as Unit, [standOf('RF')]);
    expect(right?.count).toBe(alone.count);
    expect(right?.slack).toBeCloseTo(alone.slack, 12);
    expect([...(right?.effort ?? [])]).toEqual([...alone.effort]);
    const off = alone.values.reduce((worst, value, i) => {
      const other = right?.values[i] as number;
      return Number.isNaN(value) && Number.isNaN(other) ? worst : Math.max(worst, Math.abs(value - other));
    }, 0);
    expect(off).toBeLessThan(1e-10);
    const state = Math.floor(random() * alone.count);
    expect(right?.settings(state)).toEqual(alone.settings(state));
    expect([...(right?.exact(state) ?? [])]).toEqual([...alone.exact(state)]);
  });
});
