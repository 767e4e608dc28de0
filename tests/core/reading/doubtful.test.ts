import { describe, expect, it } from 'vitest';
import { isCopy, leaningAxles, swappedAxles, unusualDiameter } from '../../../core/reading/doubtful.ts';
import { stream } from '../../tools/random-cars.ts';

const LEFT = { caster: 4.1, camber: -0.9, toe: 0.3 };
const RIGHT = { caster: 5.2, camber: -0.2, toe: -0.1 };
const REAR = { camber: -1.2, toe: 0.15 };
const BEFORE = { LF: LEFT, RF: RIGHT, LR: REAR, RR: REAR };

describe('a copy of the reading before', () => {
  it('is alike in every figure that both have', () => {
    expect(isCopy(BEFORE, BEFORE)).toBe(true);
    expect(isCopy({ LF: LEFT, RF: { camber: -0.2 } }, BEFORE)).toBe(true);
    expect(isCopy({ ...BEFORE, RR: { ...REAR, toe: 0.16 } }, BEFORE)).toBe(false);
  });
  it('is not told by a figure or two', () => {
    expect(isCopy({ LF: { camber: -0.9, toe: 0.3 } }, BEFORE)).toBe(false);
    expect(isCopy({}, BEFORE)).toBe(false);
  });
});

describe('left and right taken one for the other', () => {
  it('is told by an axle that fits what was expected the other way round', () => {
    expect(swappedAxles({ ...BEFORE, LF: RIGHT, RF: LEFT }, BEFORE)).toEqual(['front']);
    expect(swappedAxles(BEFORE, BEFORE)).toEqual([]);
    // Alike on both sides there is nothing to tell.
    expect(swappedAxles({ LR: REAR, RR: REAR }, BEFORE)).toEqual([]);
    expect(swappedAxles({ LF: RIGHT }, BEFORE)).toEqual([]);
  });
  it('is no matter of what a gauge is off, nor of a car that was moved all over', () => {
    const random = stream(5);
    const near = (wheel: typeof LEFT, by: number) => ({
      caster: wheel.caster + by * (2 * random() - 1),
      camber: wheel.camber + by * (2 * random() - 1),
      toe: wheel.toe + by * (2 * random() - 1),
    });
    for (let i = 0; i < 300; i++) {
      const straight = { ...BEFORE, LF: near(LEFT, 0.1), RF: near(RIGHT, 0.1) };
      expect(swappedAxles(straight, BEFORE)).toEqual([]);
      expect(swappedAxles({ ...straight, LF: straight.RF, RF: straight.LF }, BEFORE)).toEqual(['front']);
    }
    expect(swappedAxles({ LF: { camber: 3, toe: 1 }, RF: { camber: -4, toe: 2 } }, BEFORE)).toEqual([]);
  });
});

it('a diameter that no wheel has is asked about', () => {
  expect(unusualDiameter(430)).toBeUndefined();
  expect(unusualDiameter(711.2)).toBeUndefined();
  expect(unusualDiameter(17)).toEqual([300, 900]);
  expect(unusualDiameter(1500)).toEqual([300, 900]);
});

it('a body is asked about that stands more than 25 mm apart left and right, and not one of which a side is not known', () => {
  expect(leaningAxles({ rideHeights: { LF: 380, RF: 406, LR: 400, RR: 375 } })).toEqual(['front']);
  expect(leaningAxles({ rideHeights: { LF: 38, LR: 400, RR: 374.9 } })).toEqual(['rear']);
  expect(leaningAxles({})).toEqual([]);
});
