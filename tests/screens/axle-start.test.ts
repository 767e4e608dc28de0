/** What a car starts from on its build card: kept as it is, and left out once the axle is another one. */
import { expect, it } from 'vitest';
import { startPath } from '../../app/screens/build/axle-start.ts';
import { fileOf, textsOf } from '../../app/screens/build/car-texts.ts';
import type { AxleStart, Car } from '../../core/contract.ts';
import { frozenRecords, car as given } from '../store/records.ts';

const start: AxleStart = {
  ...{ of: 'Other', readings: 4 },
  parts: [{ corners: ['LF'], unknowns: ['LF.upperFront.x'], covariance: [2], at: [120] }],
};
const record = { ...given, car: { ...given.car, front: { ...given.car.front, start } } };
const frontOf = (texts: ReturnType<typeof textsOf>) =>
  (fileOf(texts, record.id, record) as unknown as { readonly car: Car }).car.front;

it('stays with the axle through its card', () => {
  expect(frozenRecords.cars.length).toBeGreaterThan(0);
  expect(frontOf(textsOf(record)).start).toEqual(start);
  expect(frontOf({ ...textsOf(record), 'car.front.adjusters[0].torque': '95 Nm' }).start).toEqual(start);
});

it('is left out at a touch, with another suspension, or where it cannot be read', () => {
  const texts = textsOf(record);
  for (const change of [
    { [startPath('front')]: '' },
    { 'car.front.suspension.kind': 'beam-rear' },
    { [startPath('front')]: '{"of"' },
    { [startPath('front')]: '{"of":1,"parts":{}}' },
  ]) {
    expect('start' in frontOf({ ...texts, ...change })).toBe(false);
  }
});
