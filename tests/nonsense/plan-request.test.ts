import { describe, expect, it, test } from 'vitest';
import { planRequest } from '../../core/ask/plan-request.ts';
import { validatePlanRequest } from '../../core/check/request.ts';
import { validateSpec } from '../../core/check/spec.ts';
import { validateCarFile } from '../../core/records/car-file.ts';
import { carFile, DROP, spoilt } from '../core/records/fixture.ts';

describe('what a plan is asked for', () => {
  test.each<[string, unknown, string]>([
    ['spec', DROP, 'spec: nothing is not allowed; allowed: windows for the front or the rear axle'],
    ['visits', [], 'visits: [] is not allowed; allowed: a visit with a round: a reading and the settings at it'],
    [
      'visits.0.rounds.0.settings.LF',
      { 'upper-frnt': 3 },
      'visits[0].rounds[0].settings.LF.upper-frnt: 3 is not allowed; allowed: one of the adjusters: upper-front, upper-rear, tie-rod',
    ],
    [
      'visits.0.rounds.0.settings.LF',
      { 'upper-front': 60 },
      'visits[0].rounds[0].settings.LF.upper-front: 60 is not allowed; allowed: a thickness from 0 to 6 mm',
    ],
  ])('%s = %j', (path, value, message) => {
    expect(() => planRequest(validateCarFile(spoilt(path, value)))).toThrow(message);
  });

  const good = planRequest(carFile('tarn-gt.json'));
  test.each<[unknown, string]>([
    [undefined, 'request: nothing is not allowed; allowed: an object, { car, spec, reading, settings }'],
    [
      { ...good, style: 'fastest' },
      'style: "fastest" is not allowed; allowed: closest, least-work, surest or practical',
    ],
    [
      { ...good, gauge: { camber: -1, caster: 0, toe: 0 } },
      'gauge.camber: -1 is not allowed; allowed: a number from 0 to 5 degrees',
    ],
    [
      { ...good, locked: [{ corner: 'LF', adjuster: 'x' }] },
      'locked[0].adjuster: "x" is not allowed; allowed: one of the adjusters: upper-front',
    ],
    [
      { ...good, locked: [{ corner: 'FL', adjuster: 'x' }] },
      'locked[0].corner: "FL" is not allowed; allowed: LF, RF, LR or RR',
    ],
    [
      { ...good, drawer: [{ size: 1.5, count: -1 }] },
      'drawer[0].count: -1 is not allowed; allowed: a whole number of shims, 0 to 10000',
    ],
    [{ ...good, drawer: [{ size: 1.5, count: 2.5 }] }, 'drawer[0].count: 2.5 is not allowed'],
    [{ ...good, drawer: [{ size: 1.5, count: Number.NaN }] }, 'drawer[0].count: NaN is not allowed'],
    [{ ...good, drawer: [{ size: 1.5 }] }, 'drawer[0].count: nothing is not allowed; allowed: a whole number of shims'],
    [
      { ...good, drawer: [{ size: 0, count: 2 }] },
      'drawer[0].size: 0 is not allowed; allowed: a number from 0.01 to 50 mm',
    ],
    [{ ...good, drawer: [{ size: '1.5', count: 2 }] }, 'drawer[0].size: "1.5" is not allowed'],
    [
      {
        ...good,
        drawer: [
          { size: 3, count: 2 },
          { size: 1.5, count: 1 },
          { size: 3, count: 4 },
        ],
      },
      'drawer[2].size: 3 is not allowed; allowed: a size that is listed once',
    ],
    [{ ...good, drawer: { 1.5: 2 } }, 'drawer: '],
  ])('%#', (request, message) => {
    expect(() => validatePlanRequest(request)).toThrow(message);
  });

  it('a window that is not finite', () => {
    expect(() => validateSpec({ front: { camber: { low: Number.NaN, high: 1 } } })).toThrow(
      'spec.front.camber.low: NaN is not allowed',
    );
  });
});
