/** What was seen as the rack led a move is where the next plan and the expectation start from; a place left at a guess is unsure. */
import { describe, expect, it } from 'vitest';
import type { Car, CarFile, Moved, Round } from '../../../core/contract.ts';
import {
  expectationOfFile,
  InputError,
  parseCarFile,
  planMoves,
  planOfFile,
  planRequest,
} from '../../../core/index.ts';
import practice from '../../../fixtures/cars/practice.json' with { type: 'json' };

const { car, spec } = practice as unknown as { car: Car; spec: NonNullable<CarFile['spec']> };
const FOUND: Round['reading'] = {
  LF: { caster: 4.6, camber: -0.2, toe: 0.35 },
  RF: { caster: 4.7, camber: -0.7, toe: 0.1 },
  LR: { camber: -1.75, toe: 0.38 },
  RR: { camber: -1.31, toe: 0.12 },
};
const file = (...rounds: readonly Round[]): CarFile => ({
  ...{ format: 'cornerwright', version: 1, car, spec },
  visits: [{ id: 'v', carId: car.id, opened: '2026-01-01', rounds }],
});
const found = (...moved: readonly Moved[]): Round => ({ reading: FOUND, settings: {}, moved });
const rod: Moved = { corner: 'LR', adjuster: 'toe-rod', from: 0, to: -0.5, outcome: 'set-to' };
const bolt: Moved = { corner: 'LR', adjuster: 'lower-bolt', from: 0, to: 21, outcome: 'set-to' };

describe('after a move that the rack led', () => {
  it('its wheel reads what it was turned to and what was typed; all else goes by the model', () => {
    const blind = expectationOfFile(file(found(rod)));
    const setBy = { angle: 'toe', value: 0.15, shown: { camber: -1.6 } } as const;
    const seen = expectationOfFile(file(found({ ...rod, setBy })));
    expect(seen.LR?.toe).toBeCloseTo(0.15, 12);
    expect(seen.LR?.camber).toBeCloseTo(-1.6, 12);
    expect({ ...seen, LR: null }).toEqual({ ...blind, LR: null });
    expect(planRequest(file(found({ ...rod, setBy }))).reading.LR).toEqual(seen.LR);
  });

  it('later moves of the wheel go on from there by what the model says of them', () => {
    const setBy = { angle: 'toe', value: 0.15 } as const;
    const reads = (...moved: readonly Moved[]) => expectationOfFile(file(found(...moved))).LR!;
    const more = (to: readonly Moved[], from: readonly Moved[]) => reads(...to).toe! - reads(...from).toe!;
    const led = { ...rod, setBy };
    expect(more([led, bolt], [led])).toBeCloseTo(more([rod, bolt], [rod]), 9);
  });

  it('what the rack showed of the angle itself, where it was not turned quite to it, holds', () => {
    const setBy = { angle: 'toe', value: 0.15, shown: { toe: 0.17 } } as const;
    expect(expectationOfFile(file(found({ ...rod, setBy }))).LR?.toe).toBeCloseTo(0.17, 12);
  });
});

describe('a place that was left at a guess', () => {
  const setBy = { angle: 'camber', value: -1.2 } as const;
  const guessed = { ...bolt, setBy: { ...setBy, within: 6 } };
  const next: Round = { reading: FOUND, settings: { LR: { 'lower-bolt': 21 } } };

  it('is unsure in the next plan, in this round and after a re-measure', () => {
    const unsure = [{ corner: 'LR', adjuster: 'lower-bolt', deviation: 6 }];
    expect(planRequest(file(found(guessed))).unsure).toEqual(unsure);
    expect(planRequest(file(found(guessed), next)).unsure).toEqual(unsure);
  });

  it('is sure once it was read off, or said, or set again', () => {
    expect(planRequest(file(found({ ...bolt, setBy }), next)).unsure).toBeUndefined();
    expect(
      planRequest(file(found(guessed), { ...next, settings: { LR: { 'lower-bolt': 30 } } })).unsure,
    ).toBeUndefined();
    expect(planRequest(file(found(guessed, { ...bolt, from: 21, to: 30 }))).unsure).toBeUndefined();
  });

  it('makes the chance less where a turn from there may do less or more, and leaves what is even alone', () => {
    const request = { ...planRequest(file(next)), style: 'closest' as const };
    const sure = planMoves(request);
    const moved = sure.moves.find(({ adjuster, corner }) => corner === 'LR' && adjuster === 'lower-bolt');
    expect(moved, 'a plan that turns it on').toBeDefined();
    const unsure = planMoves({ ...request, unsure: [{ corner: 'LR', adjuster: 'lower-bolt', deviation: 20 }] });
    expect(unsure.positions).toEqual(sure.positions);
    expect(unsure.deviation.LR!.toe!).toBeGreaterThan(sure.deviation.LR!.toe! * 1.2);
    const rods = planMoves({ ...request, unsure: [{ corner: 'LR', adjuster: 'toe-rod', deviation: 1 }] });
    expect(rods.deviation.LR!.toe! / sure.deviation.LR!.toe!).toBeCloseTo(1, 1);
  });

  it('is refused of an adjuster that the car has not', () => {
    const request = { ...planRequest(file(next)), unsure: [{ corner: 'LR' as const, adjuster: 'none', deviation: 1 }] };
    expect(() => planMoves(request)).toThrow(InputError);
    expect(() => planMoves(request)).toThrow(/unsure\[0\]\.adjuster/);
  });
});

it('a move of a car file says how it was set, in fields that are looked at', () => {
  const text = (setBy: unknown) => JSON.stringify(file(found({ ...bolt, setBy } as Moved)));
  const whole = { angle: 'camber', value: -1.2, shown: { toe: 0.4 }, within: 3 };
  expect(parseCarFile(text(whole)).visits?.[0]?.rounds[0]?.moved?.[0]?.setBy).toEqual(whole);
  for (const wrong of [
    { angle: 'sai', value: 1 },
    { angle: 'toe' },
    { ...whole, within: -1 },
    { ...whole, shown: { sai: 1 } },
  ]) {
    expect(() => parseCarFile(text(wrong))).toThrow(/visits\[0\]\.rounds\[0\]\.moved\[0\]\.setBy/);
  }
});

it('what is asked live in a file, its choices and its plan are one door', () => {
  const plan = planOfFile(file(found()), { style: 'practical', live: ['camber', 'toe'] });
  expect(plan).toEqual(planMoves(planRequest(file(found()), { style: 'practical', live: ['camber', 'toe'] })));
  expect(plan.moves.some(({ setBy }) => setBy)).toBe(true);
});
