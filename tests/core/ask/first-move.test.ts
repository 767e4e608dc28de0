/** A reading between two moves: offered where it makes the rest surer, by as much as simulated cars show. */
import { describe, expect, it } from 'vitest';
import { jobsOf } from '../../../core/adjuster/job.ts';
import type { Car, CarFile, CarSettings, Moved, Reading, Round } from '../../../core/contract.ts';
import { measureBetween, planOfFile, planRequest } from '../../../core/index.ts';
import { pack, wishboneWithin } from '../../tools/learn-cars.ts';
import { rod, stream } from '../../tools/random-cars.ts';
import { builtWithin, frontCar, GAUGE, normal, shown } from '../../tools/read-car.ts';

const options = { gauge: GAUGE, style: 'practical' } as const;
const adjusters = [pack('front', 'upperFront'), pack('rear', 'upperRear'), rod('rod', 'tieInner', 8)];
const window = (aim: number, half: number) => ({ low: aim - half, aim, high: aim + half });
const spec = { front: { camber: window(-0.5, 0.25), caster: window(4.2, 0.4), toe: window(0.05, 0.08) } };
const stood: CarSettings = { LF: { front: 7.5, rear: 7.5, rod: 0 } };
const found: Reading = { LF: { camber: 0.6, caster: 3.1, toe: 0.7 } };
const fileOf = (car: Car, ...rounds: readonly Round[]): CarFile => ({
  ...{ format: 'cornerwright', version: 1, car, spec },
  visits: [{ id: 'v', carId: car.id, opened: '2026-03-02', rounds }],
});

describe('a plan that is not sure', () => {
  const car = frontCar(wishboneWithin(30), adjusters);
  const file = fileOf(car, { id: 'found', reading: found, settings: stood });
  const plan = planOfFile(file, options);
  const { first } = measureBetween(file, options);

  it('says after which of its jobs a reading makes the rest surer', () => {
    const jobs = jobsOf(plan.moves);
    expect(plan.chance).toBeLessThan(0.85);
    expect(first?.now).toBe(plan.chance);
    expect(first?.after).toBeGreaterThan(plan.chance + 0.1);
    expect(first?.jobs).toBeLessThan(jobs.length);
    expect(first?.last).toEqual(jobs[first!.jobs - 1]?.map(({ corner, adjuster }) => ({ corner, adjuster })));
  });

  it('comes as sure as it says, on the mean over cars that are built as unsurely as this one', () => {
    const made = jobsOf(plan.moves).slice(0, first!.jobs).flat();
    const moved = made.map(
      ({ corner, adjuster, from, to }): Moved => ({ corner, adjuster, from, to, outcome: 'done' }),
    );
    const settings: CarSettings = {
      LF: { ...stood.LF, ...Object.fromEntries(made.map(({ adjuster, to }) => [adjuster, to])) },
    };
    const request = planRequest(file, options);
    const chances: number[] = [];
    for (let seed = 0; seed < 24; seed++) {
      const random = stream(500 + seed);
      const truth = builtWithin(request.car.front.suspension, 30, random);
      const [before, after] = [stood, settings].map((at) => shown(truth, adjusters, at.LF!, random, 0));
      const reading: Reading = {
        LF: Object.fromEntries(
          (['camber', 'caster', 'toe'] as const).map((angle) => [
            angle,
            found.LF![angle]! + after![angle]! - before![angle]! + Math.SQRT2 * GAUGE[angle] * normal(random),
          ]),
        ),
      };
      const next = planOfFile(
        fileOf(car, { id: 'found', reading: found, settings: stood, moved }, { id: 'between', reading, settings }),
        options,
      );
      chances.push(next.chance);
    }
    const mean = chances.reduce((sum, x) => sum + x, 0) / chances.length;
    expect(Math.abs(mean - first!.after)).toBeLessThan(0.12);
  });

  it('is left as it is where it is sure', () => {
    const sure = frontCar(wishboneWithin(1), adjusters);
    expect(measureBetween(fileOf(sure, { id: 'found', reading: found, settings: stood }), options)).toEqual({});
  });
});
