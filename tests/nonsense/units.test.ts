/** What must be refused, with the exact words. */
import { describe, expect, it, test } from 'vitest';
import { InputError } from '../../core/input-error.ts';
import { toeFromRimDistances } from '../../core/measure/distances.ts';
import { casterFromSweep, saiFromSweep } from '../../core/measure/sweep.ts';
import { parseLength } from '../../core/units/length.ts';
import { parseAngle } from '../../core/units/parse.ts';
import { shimStack } from '../../core/units/shim-stack.ts';
import { lengthToToe, toeToLength } from '../../core/units/toe.ts';

const DEGREES = 'degrees from −90 to 90, such as −0.35, 4,5 or 1°30′';
const MINUTES = 'degrees and minutes from −90 to 90, such as −1°30′ or 1 30';
const LENGTH = 'a length up to 10 000 mm, such as 4.5, 4,5 mm, 3/16 in or 1 1/4"';

const messageOf = (field: string, text: string, allowed: string): string =>
  `${field}: ${JSON.stringify(text)} is not allowed; allowed: ${allowed}`;

describe('angles', () => {
  test.each([
    ['', '"" is', DEGREES],
    ['   ', '"   " is', DEGREES],
    ['abc', '"abc" is', DEGREES],
    ['4.3x', '"4.3x" is', DEGREES],
    ['1e9', '"1e9" is', DEGREES],
    ['1e1', '"1e1" is', DEGREES],
    ['NaN', '"NaN" is', DEGREES],
    ['Infinity', '"Infinity" is', DEGREES],
    ['-', '"-" is', DEGREES],
    ['.', '"." is', DEGREES],
    ['--1', '"--1" is', DEGREES],
    ['+-1', '"+-1" is', DEGREES],
    ['1.2.3', '"1.2.3" is', DEGREES],
    ['1,2,3', '"1,2,3" is', DEGREES],
    ['1 30', '"1 30" is', DEGREES],
    ['0x10', '"0x10" is', DEGREES],
    ['91', '"91" is', DEGREES],
    ['-90.01', '"-90.01" is', DEGREES],
    ['99999999999999999999999999', '"99999999999999999999999999" is', DEGREES],
    ["1°60'", '"1°60\'" is', 'minutes from 0 to 59 after the degrees'],
    ["1°75.5'", '"1°75.5\'" is', 'minutes from 0 to 59 after the degrees'],
  ])('%j', (text, shown, allowed) => {
    const work = () => parseAngle(text, { field: 'LF.camber' });
    expect(work).toThrow(messageOf('LF.camber', text, allowed));
    expect(work).toThrow(`LF.camber: ${shown} not allowed; allowed: `);
  });

  test.each([
    ['1.30', MINUTES],
    ['1 30 10', MINUTES],
    ['', MINUTES],
    ['1 60', 'minutes from 0 to 59 after the degrees'],
    ['1 -30', MINUTES],
  ])('%j in degrees and minutes', (text, allowed) => {
    expect(() => parseAngle(text, { mode: 'degrees-minutes' })).toThrow(messageOf('angle', text, allowed));
  });

  test.each([undefined, null, 4.35, {}, []])('%j is not even text', (value) => {
    expect(() => parseAngle(value as unknown as string)).toThrow(InputError);
  });

  it('a megabyte of digits is refused at once', () => {
    expect(() => parseAngle('1'.repeat(1_000_000))).toThrow(/^angle: "1111.*…" is|^angle: "1111/);
  });
});

describe('lengths', () => {
  test.each([
    ['', LENGTH],
    ['two', LENGTH],
    ['1e9', LENGTH],
    ['NaN', LENGTH],
    ['1/0 in', LENGTH],
    ['3//16 in', LENGTH],
    ['1 2 in', LENGTH],
    ['5 cm', LENGTH],
    ['10001', LENGTH],
    ['400 in', LENGTH],
    ['3/16', 'a fraction only in inches, such as 3/16 in'],
    ['3/16 mm', 'a fraction only in inches, such as 3/16 in'],
  ])('%j', (text, allowed) => {
    expect(() => parseLength(text, { field: 'track' })).toThrow(messageOf('track', text, allowed));
  });
});

describe('numbers', () => {
  test.each([
    [() => toeToLength(1, 50), 'diameter: 50 is not allowed; allowed: mm from 100 to 2000'],
    [() => toeToLength(Number.NaN, 500), 'toe: NaN is not allowed; allowed: degrees from −90 to 90'],
    [() => lengthToToe(501, 500), 'length: 501 is not allowed; allowed: mm from −500 to 500, the diameter'],
    [() => shimStack(-1, [1]), 'thickness: -1 is not allowed; allowed: a thickness from 0 to 100 mm'],
    [() => shimStack(Number.NaN, [1]), 'thickness: NaN is not allowed; allowed: a thickness from 0 to 100 mm'],
    [() => shimStack(1, []), 'sizes: [] is not allowed; allowed: 1 to 64 shim sizes, mm'],
    [
      () => shimStack(1, [1, 0]),
      'sizes[1]: 0 is not allowed; allowed: a thickness from 0.01 to 100 mm, with at most 6 decimals',
    ],
    [
      () => shimStack(1, [1 / 3]),
      'sizes[0]: 0.3333333333333333 is not allowed; allowed: a thickness from 0.01 to 100 mm, with at most 6 decimals',
    ],
    [
      () => shimStack(100, [0.100001, 0.100002]),
      'sizes: [0.100001,0.100002] is not allowed; allowed: sizes that share a step of 0.00005 mm or more',
    ],
    [() => shimStack(1, [1], { max: -1 }), 'max: -1 is not allowed; allowed: a thickness of 0 mm or more'],
    [() => shimStack(1, [1], { maxCount: Number.NaN }), 'maxCount: NaN is not allowed; allowed: 0 or more shims'],
    [
      () => casterFromSweep({ camberOut: 1, camberIn: -1, steer: 0 }),
      'steer: 0 is not allowed; allowed: degrees from 5 to 45, the same each way',
    ],
    [
      () => casterFromSweep({ camberOut: 31, camberIn: -1, steer: 20 }),
      'camberOut: 31 is not allowed; allowed: degrees from −30 to 30',
    ],
    [
      () => saiFromSweep({ rollOut: 4, rollIn: Number.NaN, steer: 20 }),
      'rollIn: NaN is not allowed; allowed: degrees from −45 to 45',
    ],
    [
      () => toeFromRimDistances({ front: 0, rear: 1500, diameter: 500 }),
      'front: 0 is not allowed; allowed: mm from 200 to 5000',
    ],
    [
      () => toeFromRimDistances({ front: 900, rear: 1500, diameter: 500 }),
      'front: 900 is not allowed; allowed: within the diameter, 500 mm, of the rear distance, 1500 mm',
    ],
  ])('%#', (work, message) => {
    expect(work).toThrow(InputError);
    expect(work).toThrow(message);
  });
});
