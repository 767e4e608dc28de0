/** Rows: fixtures/published/steering-sweep.json. Procedure: US Navy NAVEDTRA 14273. */
import { describe, expect, it } from 'vitest';
import type { Suspension } from '../../core/contract.ts';
import { casterFromSweep, solveCorner } from '../../core/index.ts';
import motion from '../../fixtures/published/double-wishbone-motion.json' with { type: 'json' };
import published from '../../fixtures/published/steering-sweep.json' with { type: 'json' };
import { camberSteered } from '../tools/steered-wheel.ts';

describe('camber through a steering sweep', () => {
  for (const row of published.rows) {
    it(`caster ${row.caster}, SAI ${row.sai}, camber ${row.camber}`, () => {
      // Four published decimals.
      expect(camberSteered(row, row.steer)).toBeCloseTo(row.out, 4);
      expect(camberSteered(row, -row.steer)).toBeCloseTo(row.in, 4);
      const { out: camberOut, in: camberIn, steer, sai } = row;
      expect(casterFromSweep({ camberOut, camberIn, steer, sai })).toBeCloseTo(row.caster, 3);
    });
  }

  it('a double wishbone steered by its rack gives its caster back, its axis moving a little', () => {
    const suspension = motion.suspension as unknown as Suspension;
    const at = (rack: number) => {
      const pose = solveCorner(suspension, [], {}, { rack });
      if (!pose.reachable) throw new Error(pose.message);
      return pose;
    };
    // The rod is ahead of the axle: pushed outboard it turns the wheel out.
    const rackFor = (steer: number): number => {
      let rack = 0;
      for (let i = 0; i < 40; i++) rack += (steer + at(rack).toe) * 1.5;
      return rack;
    };
    const out = at(rackFor(10));
    const back = at(rackFor(-10));
    expect(out.toe).toBeCloseTo(-10, 6);
    const straight = at(0);
    const caster = casterFromSweep({
      camberOut: out.camber,
      camberIn: back.camber,
      steer: 10,
      ...(straight.sai === undefined ? {} : { sai: straight.sai }),
    });
    expect(Math.abs(caster - (straight.caster ?? NaN))).toBeLessThan(0.2);
  });
});
