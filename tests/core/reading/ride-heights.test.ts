import { expect, it } from 'vitest';
import { angleOf } from '../../../core/reading/axle-angles.ts';
import { crossHeight } from '../../../core/reading/ride-heights.ts';

it('the left corner less the right one, of each axle, where both were measured', () => {
  const reading = { rideHeights: { LF: 380, RF: 385, LR: 401.5 } };
  expect(crossHeight(reading, 'front')).toBe(-5);
  expect(crossHeight(reading, 'rear')).toBeUndefined();
  expect(crossHeight({}, 'front')).toBeUndefined();
  expect(crossHeight({ rideHeights: { LR: 0, RR: -3 } }, 'rear')).toBe(3);
});

it('is asked for by name, as angles are', () => {
  const reading = { LF: { camber: -1 }, rideHeights: { LF: 380, RF: 385 } };
  expect(angleOf(reading, 'RF', 'rideHeight')).toBe(385);
  expect(angleOf(reading, 'front', 'crossHeight')).toBe(-5);
  expect(angleOf(reading, 'LR', 'rideHeight')).toBeUndefined();
  expect(angleOf({ LF: { camber: -1 } }, 'LF', 'rideHeight')).toBeUndefined();
});
