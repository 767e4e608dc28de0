/** A rehearsal goes through a whole plan of any car that has windows. */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { functions } from '../../app/engine/functions.ts';
import { REHEARSALS } from '../../app/engine/rehearsals.ts';
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
    const moves = [1.5, -1.5].map((off) => rehearse(car, spec, off, ['camber', 'toe']));
    expect(Math.max(...moves)).toBeGreaterThan(1);
  });

  it('is not made where as many plans were, asked for or not', () => {
    const { rehearse, planOfFile, choicesOfFile } = functions;
    const { car, spec, reading, settings } = whole;
    const visit = { id: 'v', carId: car.id, opened: '2026-01-01', rounds: [{ reading, settings }] };
    const file = { format: 'cornerwright', version: 1, car, spec, visits: [visit] } as const;
    choicesOfFile(file);
    const [first, ...rest] = REHEARSALS.slice(0, -4);
    expect(rehearse(car, spec, first!)).toBeGreaterThan(0);
    for (const _ of rest) planOfFile(file);
    expect(rehearse(car, spec, first!)).toBeUndefined();
  });
});
