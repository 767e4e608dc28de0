import { describe, expect, it, test } from 'vitest';
import { planMoves } from '../../../core/ask/plan-moves.ts';
import { planRequest } from '../../../core/ask/plan-request.ts';
import { expectReading } from '../../../core/ask/predict-reading.ts';
import { validatePlanRequest } from '../../../core/check/request.ts';
import { parseCarFile, validateCarFile } from '../../../core/records/car-file.ts';
import { mergeCarFiles } from '../../../core/records/merge.ts';
import { carFile, carFileData, carFileNames } from './fixture.ts';

describe('example car files', () => {
  it('are there', () => {
    expect(carFileNames.length).toBeGreaterThanOrEqual(3);
  });

  test.each(carFileNames)('%s: valid, and the same when validated again', (name) => {
    const file = carFile(name);
    expect(validateCarFile(file)).toEqual(file);
    expect(validateCarFile(JSON.parse(JSON.stringify(file)))).toEqual(file);
  });

  test.each(['tarn-gt.json', 'ostler-250.json', 'ribble-six.json'])('%s: plannable', (name) => {
    const file = carFile(name);
    const request = planRequest(file);
    expect(validatePlanRequest(request)).toEqual(request);
    const plan = planMoves(request);
    expect(plan.moves.length).toBeGreaterThan(0);
    expect(plan.inWindow).toBe(true);
  });

  it('keep a wheelbase, written out, read in and merged; one without stays without', () => {
    const file = carFile('tarn-gt.json');
    const own = { ...file, car: { ...file.car, wheelbase: 2731.5 } };
    expect(parseCarFile(JSON.stringify(own)).car.wheelbase).toBe(2731.5);
    expect(mergeCarFiles(own, own).file.car.wheelbase).toBe(2731.5);
    expect(parseCarFile(JSON.stringify(file)).car).not.toHaveProperty('wheelbase');
  });

  it('keep points as they are, and build them from the tape where there are none', () => {
    const data = carFileData('tarn-gt.json') as { car: { front: { suspension: object } } };
    expect(carFile('tarn-gt.json').car.front.suspension).toEqual(data.car.front.suspension);
    const { suspension } = carFile('ostler-250.json').car.front;
    expect(suspension.points).toHaveProperty('upperBall');
    expect(suspension.tape).toHaveProperty('ballSpacing', 262);
    expect(suspension).toMatchObject({ camber: 0.2, toe: 0.05, tolerance: expect.any(Number) });
  });
});

describe('planRequest', () => {
  const file = carFile('ribble-six.json');
  const request = planRequest(file, { style: 'least-work', gauge: { camber: 0.05, caster: 0.1, toe: 0.03 } });

  it('takes the corrected reading of the last visit, not the one it replaces', () => {
    // The first entry of RF caster was 41; RF has been moved since, LF has not.
    expect(request.reading.LF?.camber).toBeCloseTo(-0.12, 12);
    expect(request.reading.LF?.caster).toBeCloseTo(3.85, 12);
    expect(request.reading.RF?.caster).toBeLessThan(6);
  });

  it('moves the settings on by what was done, and the reading with them', () => {
    expect(request.settings.LR).toEqual({ 'upper-shims': 3.175, 'toe-link': 0.5 });
    expect(request.settings.RF).toEqual({ 'tie-rod': 0, 'rear-cam': 30 });
    expect(request.settings.RR).toEqual({ 'upper-shims': 3.175 });
    const round = file.visits?.[1]?.rounds[1];
    expect(request.reading).toEqual(
      expectReading(file.car, round?.reading ?? {}, round?.settings ?? {}, request.settings),
    );
  });

  it('locks what would not move in this visit, not in an earlier one, beside what it is told to lock', () => {
    expect(request.locked).toEqual([{ corner: 'RR', adjuster: 'upper-shims' }]);
    const more = planRequest(file, { locked: [{ corner: 'LF', adjuster: 'tie-rod' }] });
    expect(more.locked).toEqual([
      { corner: 'LF', adjuster: 'tie-rod' },
      { corner: 'RR', adjuster: 'upper-shims' },
    ]);
  });

  it('hands style and gauge on', () => {
    expect(request).toMatchObject({ style: 'least-work', gauge: { camber: 0.05, caster: 0.1, toe: 0.03 } });
  });

  it('leaves the reading alone where nothing was moved', () => {
    const tarn = carFile('tarn-gt.json');
    expect(planRequest(tarn).reading).toEqual(tarn.visits?.[0]?.rounds[0]?.reading);
  });
});
