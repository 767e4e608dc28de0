/** A rehearsal goes through a whole plan of any car that has windows. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { rehearse } from '../../app/engine/rehearse.ts';
import type { Car, Spec } from '../../core/contract.ts';
import { parseCarFile } from '../../core/records/car-file.ts';
import { wholeCar } from '../bench/cars.ts';

const FOLDER = fileURLToPath(new URL('../../fixtures/cars', import.meta.url));
const files = readdirSync(FOLDER).filter((name) => name.endsWith('.json'));
const cars = files.map((name) => {
  const { car, spec } = parseCarFile(readFileSync(`${FOLDER}/${name}`, 'utf8'));
  return { name, car, spec };
});
const whole = wholeCar(9, true);

describe('a rehearsal', () => {
  it.each([...cars, { name: 'a whole car', car: whole.car, spec: whole.spec }])('makes plans of $name', (one) => {
    const { car, spec } = one as { car: Car; spec: Spec };
    const moves = [1.5, -1.5].map((off) => rehearse(car, spec, off));
    expect(Math.max(...moves)).toBeGreaterThan(1);
  });
});
