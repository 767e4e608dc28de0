/** Odometer and technician of a visit: kept as typed, told as a number where it is one. */
import { expect, test } from 'vitest';
import { distanceIn, odometerText } from '../../app/state/visit-notes.ts';

test.each([
  ['84210', 84210],
  ['84 210', 84210],
  ['84,210', 84210],
  ['84.210', 84210],
  ['1 084 210', 1084210],
  // A dash that counts tenths.
  ['84210.5', 84210],
  ['84,210.5', 84210],
  ['0', 0],
  ['', undefined],
  ['about 84000', undefined],
  ['84 21', undefined],
  ['84210.55', undefined],
  ['-5', undefined],
  ['12345678', undefined],
])('an odometer that reads %j is %j', (text, value) => {
  expect(distanceIn(text)).toBe(value);
});

test('the sheet groups its thousands, keeps its own unit, and says what is no number as it was typed', () => {
  const of = (odometer: string) => odometerText({ id: 'v', carId: 'c', opened: '2026-01-01', checks: { odometer } });
  expect(of('1084210 km')).toBe('1 084 210 km');
  expect(of('84,210 mi')).toBe('84 210 mi');
  expect(of('840 km')).toBe('840 km');
  expect(of('new engine km')).toBe('new engine km');
  expect(of('')).toBe('');
});
