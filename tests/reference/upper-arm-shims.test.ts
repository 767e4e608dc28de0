/** Source: US Army TM 9-2320-280-34, Table 20-3; hard points: Project Chrono. See fixtures/published/README.md. */
import { describe, expect, it } from 'vitest';
import type { Adjuster, Car, Settings, Suspension } from '../../core/contract.ts';
import { predictReading, solveCorner } from '../../core/index.ts';
import published from '../../fixtures/published/upper-arm-shims.json' with { type: 'json' };

/** The table is rounded to 0.1°. */
const WITHIN = 0.08;
const suspension = published.suspension as unknown as Suspension;

const pack = (id: string, at: string): Adjuster => ({
  id,
  name: `Upper arm, ${id} bracket`,
  kind: 'shim-pack',
  at,
  direction: [0, 1, 0],
  sizes: [published.shim / 2],
  max: published.shim * 2,
  reference: published.shim,
});
const axle = (steered: boolean) => ({
  suspension,
  adjusters: [pack('front', 'upperFront'), pack('rear', 'upperRear')],
  steered,
});
const car: Car = { id: 'a', label: 'a', wheel: { rimDiameter: 420 }, front: axle(true), rear: axle(false) };
const wheel = { camber: 0.3, caster: 2.5, toe: 0.1 };

const stand = (brackets: readonly string[], thickness: number): Settings =>
  Object.fromEntries(brackets.map((bracket) => [bracket, published.shim + thickness]));

describe('shims under the upper-arm brackets', () => {
  for (const side of ['LF', 'RF', 'LR', 'RR'] as const) {
    for (const row of published.rows) {
      for (const [name, factor] of [
        ['added', 1],
        ['half as thick', 0.5],
        ['taken out', -1],
      ] as const) {
        it(`${side}, ${name} under ${row.under.join(' and ')}`, () => {
          const to = { [side]: stand(row.under, factor * published.shim) };
          const after = predictReading(car, { [side]: wheel }, {}, to)[side];
          expect(Math.abs((after?.camber ?? NaN) - wheel.camber - factor * row.camber)).toBeLessThan(WITHIN);
          expect(Math.abs((after?.caster ?? NaN) - wheel.caster - factor * row.caster)).toBeLessThan(WITHIN);
        });
      }
    }
  }

  it('has the caster and SAI that follow from the points', () => {
    const pose = solveCorner(suspension, [], {});
    if (!pose.reachable) throw new Error(pose.message);
    expect(pose.caster).toBeCloseTo(published.caster, 3);
    expect(pose.sai).toBeCloseTo(published.sai, 3);
  });
});
