/** All that is wrong with a file at once, field by field, the first as ever. */
import { describe, expect, it } from 'vitest';
import { InputError, problemsOf, validateCarFile } from '../../../core/index.ts';
import { spoilt } from '../../tools/spoil.ts';
import { carFile } from '../records/fixture.ts';

const good = carFile('tarn-gt.json');
const changed = (path: string, value: unknown) => {
  const file = structuredClone(good) as unknown;
  const keys = path.split('.');
  const last = keys.pop()!;
  const holder = keys.reduce<unknown>((one, key) => (one as Record<string, unknown>)[key], file) as Record<
    string,
    unknown
  >;
  if (value === undefined) delete holder[last];
  else holder[last] = value;
  return file;
};
const WRONG: readonly (readonly [path: string, value: unknown, field: string])[] = [
  ['car.label', '', 'car.label'],
  ['car.wheel.rimDiameter', 12, 'car.wheel.rimDiameter'],
  ['car.front.suspension.points.upperBall', undefined, 'car.front.suspension.points.upperBall'],
  ['car.front.suspension.points.lowerBall', [1, 2, 'x'], 'car.front.suspension.points.lowerBall[2]'],
  ['car.front.suspension.camber', 99, 'car.front.suspension.camber'],
  ['car.front.suspension.toe', undefined, 'car.front.suspension.toe'],
  ['car.front.adjusters.0.max', -1, 'car.front.adjusters[0].max'],
  ['car.front.adjusters.1.sizes', [], 'car.front.adjusters[1].sizes'],
  ['car.rear.steered', 'no', 'car.rear.steered'],
  ['spec.front.camber.low', 50, 'spec.front.camber.low'],
];

describe('what is wrong with a car file', () => {
  it('is nothing where it is right', () => expect(problemsOf(good)).toEqual([]));

  it('is told all at once, each by its own field', () => {
    let file = good as unknown;
    for (const [path, value] of WRONG) {
      const one = changed(path, value);
      expect(problemsOf(one).length, path).toBeGreaterThan(0);
    }
    file = structuredClone(good);
    for (const [path, value] of WRONG) {
      const keys = path.split('.');
      const last = keys.pop()!;
      const holder = keys.reduce<unknown>((one, key) => (one as Record<string, unknown>)[key], file);
      if (value === undefined) delete (holder as Record<string, unknown>)[last];
      else (holder as Record<string, unknown>)[last] = value;
    }
    const fields = problemsOf(file).map(({ field }) => field);
    expect(fields).toEqual(expect.arrayContaining(WRONG.map(([, , field]) => field)));
    expect(new Set(fields).size).toBe(fields.length);
  });

  it('begins with what it is refused by', () => {
    for (const bad of spoilt(good.car.front as never)) {
      const file = { ...good, car: { ...good.car, front: bad } };
      let first: InputError | undefined;
      try {
        validateCarFile(file);
      } catch (error) {
        if (!(error instanceof InputError)) throw error;
        first = error;
      }
      expect(problemsOf(file)[0]?.field).toBe(first?.field);
    }
  });
});
