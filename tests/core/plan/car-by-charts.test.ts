/** Plans for a car known by printed charts, against every combination. */

import { describe, expect, it } from 'vitest';
import type { Adjuster, Corner, PlanRequest, Reading, Settings } from '../../../core/contract.ts';
import { adjusterPositions, planMoves, predictReading } from '../../../core/index.ts';
import { randomReading, score } from '../../tools/brute-force.ts';
import { chartSigmas } from '../../tools/chart-error.ts';
import { oneOf, stream } from '../../tools/random-cars.ts';
import { ALL, ANGLES, againstThrust, car, type Degrees, OWN, request, SEEDS, there } from '../../tools/small-charts.ts';

describe('a whole car by charts', () => {
  it.each(SEEDS.slice(0, 8))('seed %i: the closest, front toe against the thrust line or not', (seed) => {
    const random = stream(seed * 43);
    const toe = oneOf(random, [0.02, 0.3]);
    const rear = { toe: { low: -toe, high: 0.2 + toe }, thrustAngle: { low: -0.04, high: 0.06 } };
    const front = { toe: { low: -0.1, high: 0.2 }, totalToe: { low: -0.3, high: 0.4 } };
    const toeReference = seed % 2 ? ('thrust-line' as const) : ('centreline' as const);
    const reading: Reading = { ...randomReading(random, 0.3), toeReference };
    const locked = (['LF', 'RF'] as const).flatMap((corner) =>
      ['lean', 'trail'].map((adjuster) => ({ corner, adjuster })),
    );
    const asked: PlanRequest = { car, spec: { front, rear }, reading, settings: {}, locked };
    const plan = planMoves(asked);
    const moved = (corner: Corner) => OWN[corner].filter(({ lean = 0, trail = 0 }) => lean === 0 && trail === 0);
    let best = { inWindow: false, distance: Number.POSITIVE_INFINITY };
    for (const LF of moved('LF'))
      for (const RF of moved('RF'))
        for (const LR of moved('LR'))
          for (const RR of moved('RR')) {
            const to = { LF, RF, LR, RR };
            const after = Object.fromEntries(
              ALL.map((corner) => [corner, there(corner, reading[corner] ?? {}, to[corner]).wheel]),
            );
            const found = score(asked.spec, againstThrust(reading, after));
            if (found.inWindow && !best.inWindow) best = found;
            else if (found.inWindow === best.inWindow && found.distance < best.distance) best = found;
          }
    expect(plan.inWindow).toBe(best.inWindow);
    expect(plan.distance).toBeCloseTo(best.distance, 9);
    expect(plan.predicted.toeReference).toBe(toeReference);
    const after = Object.fromEntries(
      ALL.map((corner) => [corner, there(corner, reading[corner] ?? {}, plan.positions[corner]).wheel]),
    );
    const read = againstThrust(reading, after);
    for (const corner of ALL)
      for (const angle of ANGLES) {
        const [own, wanted] = [plan.predicted[corner]?.[angle], read[corner]?.[angle]];
        if (wanted === undefined) expect(own).toBeUndefined();
        else expect(own).toBeCloseTo(wanted, 9);
      }
  });

  it('says how far off each angle may be that was read, and nothing of others', () => {
    const gauge = { camber: 0.02, caster: 0.05, toe: 0.01 };
    const reading: Reading = { LF: { camber: 0.3, toe: 0.2 }, RF: { caster: 3 }, LR: { toe: 0.1 } };
    const spec = { front: { left: { toe: { low: -0.1, high: 0.1 } } }, rear: { camber: { low: -1, high: 0 } } };
    const plan = planMoves({ car, spec, reading, settings: {}, gauge });
    const moved = plan.moves.map(({ corner, adjuster }) => `${corner} ${adjuster}`);
    expect(moved).toContain('LF turn');
    // A chart is known to ± 20 % at 95 %.
    const variance = (angle: 'camber' | 'caster' | 'toe') =>
      car.front.adjusters.reduce(
        (sum, { id, perStep }) => {
          const steps = Number(plan.positions.LF[id]);
          const change = Object.entries(perStep as Degrees).map(([name, degrees = 0]) => [name, steps * degrees]);
          return steps === 0 ? sum : sum + chartSigmas(Object.fromEntries(change))[angle] ** 2;
        },
        2 * gauge[angle] ** 2,
      );
    expect(plan.deviation).toEqual({
      LF: {
        camber: expect.closeTo(Math.sqrt(variance('camber')), 9),
        toe: expect.closeTo(Math.sqrt(variance('toe')), 9),
      },
      RF: { caster: expect.closeTo(Math.SQRT2 * gauge.caster, 9) },
      LR: { toe: expect.closeTo(Math.SQRT2 * gauge.toe, 9) },
    });
    expect(plan.unmeasured).toEqual([
      { where: 'LR', angle: 'camber' },
      { where: 'RR', angle: 'camber' },
    ]);
  });

  it('a wheel that was not read is left alone, and so is what is locked', () => {
    const spec = { front: { toe: { low: -0.1, high: 0.1 } } };
    const reading: Reading = { LF: { toe: 0.5 } };
    const free = planMoves({ car, spec, reading, settings: {} });
    expect(new Set(free.moves.map(({ corner }) => corner))).toEqual(new Set(['LF']));
    const locked = [{ corner: 'LF', adjuster: 'turn' }] as const;
    expect(planMoves({ car, spec, reading, settings: {}, locked }).positions.LF.turn).toBe(0);
  });

  it('each move shows what is read after it, from where the adjusters stand', () => {
    const settings = { LF: { lean: 1, turn: -1 }, RF: { turn: 2 } };
    const asked = { ...request(2), settings };
    const plan = planMoves(asked);
    expect(plan.moves.length).toBeGreaterThan(1);
    let now: Partial<Record<Corner, Settings>> = settings;
    for (const { corner, adjuster, from, to, expectAfter } of plan.moves) {
      expect(from).toBe(now[corner]?.[adjuster] ?? 0);
      now = { ...now, [corner]: { ...now[corner], [adjuster]: to } };
      expect(expectAfter).toEqual(predictReading(car, asked.reading, settings, now));
    }
    for (const corner of ALL)
      for (const { id } of car[corner.endsWith('F') ? 'front' : 'rear'].adjusters) {
        expect(plan.positions[corner][id]).toBe(now[corner]?.[id] ?? 0);
        expect(
          adjusterPositions(
            car[corner.endsWith('F') ? 'front' : 'rear'].adjusters.find((one) => one.id === id) as Adjuster,
          ),
        ).toContain(plan.positions[corner][id]);
      }
  });
});
