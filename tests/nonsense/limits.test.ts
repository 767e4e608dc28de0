/** What lies just beyond a limit is refused by name, and what lies on it is taken. */
import { describe, expect, it, test } from 'vitest';
import { InputError } from '../../core/input-error.ts';
import { toeFromRimDistances } from '../../core/measure/distances.ts';
import { casterFromSweep, saiFromSweep } from '../../core/measure/sweep.ts';
import { formatLength, parseLength } from '../../core/units/length.ts';
import { shimStack } from '../../core/units/shim-stack.ts';
import { toeToLength } from '../../core/units/toe.ts';

const roll = { rollOut: 4, rollIn: -4, steer: 20 };
const caster = { camberOut: 1, camberIn: -1, steer: 20 };
const rim = { front: 1500, rear: 1500, diameter: 500 };

test.each<[string, () => unknown]>([
  ['diameter: 2001 is not allowed; allowed: mm from 100 to 2000', () => toeToLength(1, 2001)],
  ['thickness: 101 is not allowed; allowed: a thickness from 0 to 100 mm', () => shimStack(101, [1])],
  ['is not allowed; allowed: 1 to 64 shim sizes, mm', () => shimStack(1, Array(65).fill(1))],
  ['sizes: 1 is not allowed; allowed: 1 to 64 shim sizes, mm', () => shimStack(1, 1 as never)],
  ['sizes[0]: "1" is not allowed; allowed: a thickness from 0.01 to 100 mm', () => shimStack(1, ['1' as never])],
  ['sizes[0]: 101 is not allowed; allowed: a thickness from 0.01 to 100 mm', () => shimStack(1, [101])],
  ['steer: 46 is not allowed; allowed: degrees from 5 to 45', () => saiFromSweep({ ...roll, steer: 46 })],
  ['rollOut: -46 is not allowed', () => saiFromSweep({ ...roll, rollOut: -46 })],
  ['camberOut: 31 is not allowed', () => saiFromSweep({ ...roll, camberOut: 31 })],
  ['camberIn: -31 is not allowed', () => saiFromSweep({ ...roll, camberIn: -31 })],
  ['caster: 46 is not allowed', () => saiFromSweep({ ...roll, caster: 46 })],
  ['camberIn: 31 is not allowed', () => casterFromSweep({ ...caster, camberIn: 31 })],
  ['sai: 46 is not allowed', () => casterFromSweep({ ...caster, sai: 46 })],
  ['front: 199 is not allowed', () => toeFromRimDistances({ ...rim, front: 199 })],
  ['rear: 5001 is not allowed', () => toeFromRimDistances({ ...rim, rear: 5001 })],
  ['diameter: 99 is not allowed', () => toeFromRimDistances({ ...rim, diameter: 99 })],
])('%s', (message, work) => {
  expect(work).toThrow(InputError);
  expect(work).toThrow(message);
});

describe('a length', () => {
  test.each(['1/0', '1 in/4', '2.1/4 in', '3/16 4 in', '0'.repeat(61), 'two'])('is not %j', (text) => {
    expect(() => parseLength(text, { field: 'track' })).toThrow(InputError);
    expect(() => parseLength(text, { field: 'track' })).toThrow(/^track: .* allowed: a length up to 10 000 mm/);
  });

  test.each([undefined, null, 4.5, ['4.5']])('is not %j, which is not even text', (value) => {
    expect(() => parseLength(value as unknown as string)).toThrow(InputError);
    expect(() => parseLength(value as unknown as string)).toThrow(/^length: /);
  });

  test.each([Number.NaN, Number.NEGATIVE_INFINITY])('of %d never reaches a screen', (value) => {
    expect(() => formatLength(value)).toThrow(`length: ${value} is not allowed; allowed: a finite number of mm`);
  });
});

it('a refusal shows as much of a value as fits a phone', () => {
  const shown = (length: number) => {
    try {
      parseLength('x'.repeat(length));
      return '';
    } catch (error) {
      return /^length: (.*) is not allowed/.exec((error as Error).message)?.[1];
    }
  };
  // With its two quotation marks: 60 characters, and then 57 and an ellipsis.
  expect(shown(58)).toBe(`"${'x'.repeat(58)}"`);
  expect(shown(59)).toBe(`"${'x'.repeat(56)}…`);
});
