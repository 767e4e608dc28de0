/** What each unknown adds, against central differences of cars that are off by a little: where adjusters hang on it too. */
import { describe, expect, it } from 'vitest';
import type { Side } from '../../../core/adjuster/of-corner.ts';
import { movedBy, unknownsOf } from '../../../core/adjuster/unknowns.ts';
import type { Adjuster, Settings } from '../../../core/contract.ts';
import { ByUnknown } from '../../../core/pose/by-unknown.ts';
import { Mechanism } from '../../../core/pose/mechanism.ts';
import { randomSuspension, rod, stream } from '../../tools/random-cars.ts';

const sleeve: Adjuster = { id: 'sleeve', kind: 'offset-sleeve', degrees: 1.5, marks: 24, reference: 30 };
const chart: Adjuster = {
  id: 'chart',
  kind: 'effect-table',
  perStep: { camber: 0.2, caster: -0.1, toe: 0.03 },
  range: [-5, 5],
  reference: 0,
};
const side = (kind: string, adjusters: readonly Adjuster[]): Side => ({
  suspension: randomSuspension(stream(kind.length), kind),
  adjusters,
});

const CASES: readonly (readonly [name: string, side: Side, settings: Settings])[] = [
  [
    'a sleeve, which tilts the axis that the points say',
    side('beam-front', [sleeve, rod('rod', 'tieInner')]),
    { sleeve: 120, rod: 0.5 },
  ],
  [
    'a chart beside links',
    side('double-wishbone', [chart, { ...rod('rod', 'tieInner'), usual: true }]),
    { chart: 3, rod: -0.5 },
  ],
  ['a chart alone', side('unknown', [chart]), { chart: -2 }],
];

describe.each(CASES)('%s', (_, own, settings) => {
  const sides = [own];
  const unknowns = unknownsOf(sides);
  // A little off already, as a fit has it on its way.
  const off = Float64Array.from(unknowns, ({ sigma }, i) => (sigma / 4) * Math.sin(i + 1));
  const numbersOff = (unknown: number, by: number): Float64Array => {
    const model = new Mechanism(
      movedBy(
        sides,
        unknowns,
        off.map((x, i) => (i === unknown ? x + by : x)),
      ),
    );
    const out = new Float64Array(model.numbers);
    expect(model.angles(model.parameters([settings]), out)).toBe(true);
    return out;
  };

  it('adds what the car that is off by it shows', () => {
    const model = new Mechanism(movedBy(sides, unknowns, off));
    const params = model.parameters([settings]);
    expect(model.angles(params, new Float64Array(model.numbers))).toBe(true);
    const gradient = model.gradient(params);
    if (!gradient) throw new Error('a pose that is not held');
    const slopes = new ByUnknown(model, unknowns, sides, off).slopes(gradient, [settings]);
    expect(unknowns.length).toBeGreaterThan(0);
    unknowns.forEach((one, unknown) => {
      const h = one.sigma / 100;
      const [up, down] = [numbersOff(unknown, h), numbersOff(unknown, -h)];
      up.forEach((x, k) => {
        expect(slopes[unknown * model.numbers + k]!).toBeCloseTo((x - down[k]!) / (2 * h), 5);
      });
    });
  });
});
