/** More positions or adjusters than can be gone through are refused at once: field, value and what is allowed. */
import { describe, expect, it, test } from 'vitest';
import { planRequest } from '../../core/ask/plan-request.ts';
import { validateAdjusters } from '../../core/check/adjusters.ts';
import type { Adjuster } from '../../core/contract.ts';
import { parseCarFile, planMoves } from '../../core/index.ts';
import { carFile } from '../core/records/fixture.ts';
import { randomSuspension, stream } from '../tools/random-cars.ts';

/** ms that it took of the processor: how busy the machine is besides does not count. */
function costOf(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

const good = carFile('tarn-gt.json');
const wishbone = randomSuspension(stream(4), 'double-wishbone');
const strut = randomSuspension(stream(4), 'strut');

const SLIDE = { id: 'x', kind: 'slide', at: 'lowerFront', direction: [0, 1, 0], step: 1, range: [-5, 5], reference: 0 };
const ROD = {
  id: 'x',
  kind: 'threaded-rod',
  links: ['tieInner'],
  lead: 2,
  stepTurns: 0.25,
  range: [-5, 5],
  reference: 0,
};
const CAM = { id: 'x', kind: 'eccentric-cam', at: 'lowerFront', direction: [0, 1, 0], eccentricity: 4, marks: 24 };
const BOLT = { id: 'x', kind: 'clamp-bolt', step: 0.1, range: [-5, 5], reference: 0 };

test.each<[string, object, string]>([
  ['a slide', { ...SLIDE, step: 1e-9 }, 'adjusters[0].step: 1e-9 is not allowed; allowed: 0.0011 mm or more'],
  ['a slide', { ...SLIDE, step: 5e-324 }, 'adjusters[0].step: 5e-324 is not allowed'],
  ['a slide', { ...SLIDE, step: 5e-324, range: [0, 5e-324] }, 'adjusters[0].step: 5e-324 is not allowed'],
  [
    'a slide',
    { ...SLIDE, step: 4e-6, range: [-200, 200] },
    'adjusters[0].step: 0.000004 is not allowed; allowed: 0.041 mm',
  ],
  ['a rod', { ...ROD, stepTurns: 1e-6 }, 'adjusters[0].stepTurns: 0.000001 is not allowed; allowed: 0.0011 turns or'],
  [
    'a cam',
    { ...CAM, reference: 0, stepMarks: 1e-6 },
    'adjusters[0].stepMarks: 0.000001 is not allowed; allowed: 0.0013 marks',
  ],
  ['a bolt', { ...BOLT, step: 1e-6 }, 'adjusters[0].step: 0.000001 is not allowed; allowed: 0.0011 degrees or more'],
  [
    'a set of wedges',
    { id: 'x', kind: 'wedge-shim', degrees: Array.from({ length: 20 }, (_, i) => 0.1 + i / 10), marks: 720 },
    'adjusters[0]: 14401 is not allowed; allowed: up to 10000 positions',
  ],
])('%s that is too fine is refused by its step', (_, adjuster, message) => {
  const suspension = 'kind' in adjuster && adjuster.kind === 'clamp-bolt' ? strut : wishbone;
  const ms = costOf(() => expect(() => validateAdjusters([adjuster], suspension)).toThrow(message));
  expect(ms).toBeLessThan(500);
});

it('a car file with such a step is refused as it is read, by its field', () => {
  const front = { ...good.car.front, adjusters: [{ ...SLIDE, step: 1e-6, range: [-200, 200] }] };
  const text = JSON.stringify({ ...good, visits: [], car: { ...good.car, front } });
  expect(() => parseCarFile(text)).toThrow('car.front.adjusters[0].step: 0.000001 is not allowed; allowed: 0.041 mm');
});

it('more adjusters than a corner can carry are refused, and how many may be is said', () => {
  const many = Array.from({ length: 21 }, (_, i) => ({ ...SLIDE, id: `${i}` }));
  expect(() => validateAdjusters(many, wishbone)).toThrow(
    'adjusters: 21 is not allowed; allowed: up to 16 adjusters a corner',
  );
});

describe('what is just allowed is planned', () => {
  const request = planRequest(good);
  const { front } = request.car;
  const planned = (adjusters: readonly Adjuster[]) => {
    const car = { ...request.car, front: { ...front, adjusters } };
    const { reading, spec } = request;
    return planMoves({ car, reading, spec, settings: {}, style: 'practical' });
  };
  const slides = (count: number, step: number, range: readonly [number, number]): Adjuster[] =>
    Array.from({ length: count }, (_, i) => ({
      ...{ id: `slide-${i}`, kind: 'slide', direction: [0, 1, i / 10], step, range, reference: 0 },
      at: ['upperFront', 'upperRear', 'lowerFront', 'lowerRear'][i % 4]!,
    }));

  it('sixteen plates of two places each, at once', () => {
    const all = slides(16, 1, [0, 1]);
    const ms = costOf(() => expect(planned(all).moves.length).toBeGreaterThan(0));
    expect(ms).toBeLessThan(4000);
  });

  it('a plate, and a rod, of close to ten thousand places', () => {
    expect(planned(slides(1, 0.0005, [-2.4, 2.4])).moves.length).toBeGreaterThan(0);
    const rod = { ...ROD, stepTurns: 0.0011 } as unknown as Adjuster;
    expect(planned([rod]).moves.length).toBeGreaterThan(0);
  });

  it('not plates of which any two have more places together than can be listed: it is said how many', () => {
    // Any two of four, each with 801 places; and of different numbers of places.
    expect(() => planned(slides(4, 0.01, [-4, 4]))).toThrow(
      expect.objectContaining({
        ...{ field: 'front.adjusters', value: 6 * 801 ** 2 },
        rule: expect.objectContaining({ is: 'combinations', most: 5e5 }),
      }),
    );
    const uneven = slides(3, 0.01, [-4, 4]).map((one, i) => ({ ...one, step: [0.01, 0.02, 0.04][i] }) as Adjuster);
    expect(() => planned(uneven)).toThrow(expect.objectContaining({ value: 801 * 401 + 801 * 201 + 401 * 201 }));
  });
});
