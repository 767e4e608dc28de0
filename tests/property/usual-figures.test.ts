/**
 * A cam of which only the usual throw is known: the plan counts that it may be another, against cars drawn with theirs; by
 * the rack it does not matter; and one move that was read teaches it.
 */
import { describe, expect, it } from 'vitest';
import type { Adjuster, Car, Reading } from '../../core/contract.ts';
import { learn, planMoves, predictReading, validateCar } from '../../core/index.ts';
import { startersFor } from '../../core/starters/catalogue.ts';
import { fitmentsFor } from '../../core/starters/fitments.ts';
import { suspensionFromStarter } from '../../core/starters/starter.ts';
import { stream } from '../tools/random-cars.ts';

const [leanCam] = fitmentsFor('five-link', 'rear').find(({ id }) => id === 'lean-cam')!.adjusters as [Adjuster];
const { usual: _, ...looked } = leanCam;
const suspension = { ...suspensionFromStarter(startersFor('five-link', 'rear')[0]!, 'rear'), tolerance: 0 };
const carWith = (adjuster: Adjuster): Car => ({
  ...{ id: 'c', label: 'c', wheel: {} },
  front: { suspension: { kind: 'unknown', points: {}, camber: 0, toe: 0 }, adjusters: [], steered: true },
  rear: { suspension, adjusters: [adjuster as never], steered: false },
});
const reading: Reading = { LR: { camber: -1.8, toe: 0.1 } };
const spec = { rear: { left: { camber: { low: -1.25, aim: -1, high: -0.75 } } } };
const gauge = { camber: 0.03, caster: 0.1, toe: 0.02 };
const plan = (adjuster: Adjuster, more = {}) =>
  planMoves({ car: carWith(adjuster), spec, reading, settings: {}, gauge, ...more });

describe('a usual cam', () => {
  it('is a car’s like any other', () => {
    expect(validateCar(carWith(leanCam)).rear.adjusters[0]).toMatchObject({ usual: true });
    expect(() => validateCar(carWith({ ...leanCam, usual: 'yes' } as never))).toThrow(/usual/);
  });

  it('may have another throw: so the plan says, against cars drawn with theirs', () => {
    const { positions, deviation } = plan(leanCam);
    const exact = plan(looked).deviation.LR!.camber!;
    const next = stream(3);
    const normal = () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
    const gains = Array.from({ length: 400 }, () => {
      const own = { ...looked, eccentricity: looked.eccentricity * (1 + 0.15 * normal()) };
      return predictReading(carWith(own), reading, {}, positions).LR!.camber!;
    });
    const mean = gains.reduce((sum, x) => sum + x, 0) / gains.length;
    const spread = Math.sqrt(gains.reduce((sum, x) => sum + (x - mean) ** 2, 0) / gains.length);
    const told = Math.sqrt(deviation.LR!.camber! ** 2 - exact ** 2);
    expect(spread).toBeGreaterThan(0.08);
    expect(told / spread).toBeGreaterThan(0.88);
    expect(told / spread).toBeLessThan(1.12);
  });

  it('costs nothing where it is turned until the rack shows it', () => {
    const live = plan(leanCam, { live: ['camber'] });
    expect(live.moves[0]?.setBy).toMatchObject({ angle: 'camber' });
    expect(live.deviation.LR!.camber).toBeLessThan(0.05);
    expect(plan(leanCam).deviation.LR!.camber).toBeGreaterThan(0.1);
  });

  it('is learned by a move that was read', () => {
    const to = { LR: { [leanCam.id]: 45 } };
    const stronger = { ...looked, eccentricity: looked.eccentricity * 1.2 };
    const after = predictReading(carWith(stronger), reading, {}, to);
    const rounds = [
      { id: 'a', reading, settings: {} },
      { id: 'b', reading: after, settings: to },
    ];
    const model = learn(carWith(leanCam), rounds, gauge);
    const own = model.rear.adjusters[0]!.eccentricity;
    expect(own / looked.eccentricity).toBeGreaterThan(1.15);
    expect(own / looked.eccentricity).toBeLessThan(1.25);
    // What was looked at is left as it was typed.
    expect(learn(carWith(looked), rounds, gauge).rear.adjusters[0]!.eccentricity).toBe(looked.eccentricity);
  });
});
