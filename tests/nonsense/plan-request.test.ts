import { describe, expect, it, test } from 'vitest';
import { planRequest } from '../../core/records/plan-request.ts';
import { validateCarFile, validatePlanRequest, validateSpec } from '../../core/records/validate.ts';
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
    [{ ...good, style: 'fastest' }, 'style: "fastest" is not allowed; allowed: closest, least-work or surest'],
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
  ])('%#', (request, message) => {
    expect(() => validatePlanRequest(request)).toThrow(message);
  });

  it('a window that is not finite', () => {
    expect(() => validateSpec({ front: { camber: { low: Number.NaN, high: 1 } } })).toThrow(
      'spec.front.camber.low: NaN is not allowed',
    );
  });
});
