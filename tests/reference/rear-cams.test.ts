/**
 * Thrust from both rear toe cams. Cam scale: Mazda CX-5 2025 service manual (fixtures/published/README.md), toe 4′, 16′,
 * 34′, 58′, 1°26′, 1°56′ at its marks. Sign: Mercury 2004, (left rear − right rear)/2, + to the right.
 */
import { describe, expect, it, test } from 'vitest';
import type { Adjuster, Axle, Car } from '../../core/contract.ts';
import { axleAngles, pointsFromTape, predictReading } from '../../core/index.ts';
import published from '../../fixtures/published/cam-scales.json' with { type: 'json' };

const TOE_MINUTES = [0, 4, 16, 34, 58, 86, 116];
const { eccentricity, degreesPerMark } = published.end;

const cam: Adjuster = {
  id: 'toe-cam',
  kind: 'eccentric-cam',
  at: 'tieInner',
  direction: [0, 1, 0],
  zero: 'end',
  eccentricity,
  marks: 360 / degreesPerMark,
  reference: 0,
};
/** A toe link whose arm is 207 mm: 7.00 mm ↔ 1°56′, implied by the scale. */
const tape = { caster: 0, sai: 0, camber: -1, toe: 0, steeringArmLength: 207, axleBehindFront: 2700 };
const { points, camber, toe } = pointsFromTape(tape);
const axle: Axle = { suspension: { kind: 'double-wishbone', points, camber, toe }, adjusters: [cam], steered: false };
const car: Car = { id: 'a', label: 'a', wheel: { rimDiameter: 420 }, front: { ...axle, steered: true }, rear: axle };
const wheel = { camber: -1, toe: 0.05 };
const reading = { LF: wheel, RF: wheel, LR: wheel, RR: wheel };

const atMarks = (left: number, right: number, toeReference: 'centreline' | 'thrust-line' = 'centreline') =>
  predictReading(
    car,
    { ...reading, toeReference },
    {},
    { LR: { 'toe-cam': left * degreesPerMark }, RR: { 'toe-cam': right * degreesPerMark } },
  );

describe('both rear toe cams', () => {
  test.each([1, 2, 3, 4, 5, 6])('mark %d gives the toe of the scale', (mark) => {
    const gained = ((atMarks(mark, 0).LR?.toe ?? NaN) - wheel.toe) * 60;
    expect(Math.abs(gained - (TOE_MINUTES[mark] as number))).toBeLessThan(1);
  });

  test.each([
    [6, 0],
    [0, 6],
    [3, 3],
    [5, 2],
    [1, 4],
  ])('left mark %d, right mark %d: thrust is half the difference of the two toe changes', (left, right) => {
    const at = atMarks(left, right);
    const change = (corner: 'LR' | 'RR') => (at[corner]?.toe ?? NaN) - wheel.toe;
    const { thrustAngle = NaN, totalToe = NaN } = axleAngles(at.LR, at.RR);
    expect(thrustAngle).toBeCloseTo((change('LR') - change('RR')) / 2, 12);
    expect(totalToe - 2 * wheel.toe).toBeCloseTo(change('LR') + change('RR'), 12);
    const scale = ((TOE_MINUTES[left] as number) - (TOE_MINUTES[right] as number)) / 2;
    expect(Math.abs(thrustAngle * 60 - scale)).toBeLessThan(1);
    // Left wheel toed in further than the right: the axle steers to the right, and front toe reads against it.
    expect(Math.sign(Math.round(thrustAngle * 1e6))).toBe(Math.sign(left - right));
    const against = atMarks(left, right, 'thrust-line');
    expect(against.LF?.toe).toBeCloseTo(wheel.toe - thrustAngle, 12);
    expect(against.RF?.toe).toBeCloseTo(wheel.toe + thrustAngle, 12);
  });

  it('turned alike they leave the thrust line alone', () => {
    expect(axleAngles(atMarks(4, 4).LR, atMarks(4, 4).RR).thrustAngle).toBe(0);
  });
});
