/** Source: US Army TM 5-4210-230-14&P-1, p. 185 (public domain): front-down is positive, subtracted from the setting. */
import { describe, expect, it, test } from 'vitest';
import { casterAgainstFrame, casterToMeasure, InputError } from '../../core/index.ts';

describe('caster of a rigid axle on a tilted frame', () => {
  test.each([
    ['the manual’s example: specified +1°, frame 1° down in front', 1, 1, 0],
    ['a front-down frame angle is subtracted from the setting', 2.5, 0.75, 1.75],
    ['a front-high one is added', 2.5, -0.75, 3.25],
    ['a level frame changes nothing', -1, 0, -1],
  ])('%s', (_, specified, frame, read) => {
    expect(casterToMeasure(specified, frame)).toBeCloseTo(read, 12);
    expect(casterAgainstFrame(read, frame)).toBeCloseTo(specified, 12);
  });

  it('is the same as turning the axle with its frame', () => {
    // A steering axis of 3° caster on a level frame, carried 2° nose down: rotation in the side view.
    const [x, z] = [-Math.sin((3 * Math.PI) / 180), Math.cos((3 * Math.PI) / 180)];
    const down = (2 * Math.PI) / 180;
    const [tx, tz] = [x * Math.cos(down) + z * Math.sin(down), z * Math.cos(down) - x * Math.sin(down)];
    const read = (Math.atan2(-tx, tz) * 180) / Math.PI;
    expect(casterAgainstFrame(read, 2)).toBeCloseTo(3, 12);
  });

  it.each([
    [Number.NaN, 0, 'measured'],
    [91, 0, 'measured'],
    [3, 46, 'frameAngle'],
    ['3' as unknown as number, 0, 'measured'],
  ])('refuses %s and %s by name', (measured, frame, field) => {
    expect(() => casterAgainstFrame(measured, frame)).toThrow(InputError);
    expect(() => casterAgainstFrame(measured, frame)).toThrow(new RegExp(`^${field}: `));
  });

  it('takes what is at its limits, and names what the manual specifies when it is beyond', () => {
    expect(casterToMeasure(90, -45)).toBe(135);
    expect(casterAgainstFrame(-90, 45)).toBe(-45);
    expect(() => casterToMeasure(-91, 0)).toThrow('specified: -91 is not allowed; allowed: a number from -90 to 90');
    expect(() => casterToMeasure(3, -46)).toThrow('frameAngle: -46 is not allowed; allowed: a number from -45 to 45');
  });
});
