/** Every starter is a car that validates, solves and handles as such a layout does. Ranges are trade practice, no source. */
import { describe, expect, it } from 'vitest';
import { sideEffects, solveCorner, suspensionKinds, validateCar } from '../../../core/index.ts';
import { starters, startersFor } from '../../../core/starters/catalogue.ts';
import { STARTER_TOLERANCE, STARTER_WHEELBASE, suspensionFromStarter } from '../../../core/starters/starter.ts';
import { poseOf } from '../../tools/pose.ts';

const named = starters.map((one) => [`${one.kind}, ${one.name}`, one] as const);

describe.each(named)('%s', (_, starter) => {
  const suspension = suspensionFromStarter(starter, starter.axle);

  it.each(['front', 'rear'] as const)('is a valid %s axle, known as well as a guess is', (axle) => {
    const made = { suspension: suspensionFromStarter(starter, axle), adjusters: [], steered: axle === 'front' };
    const car = validateCar({ id: 'c', label: 'c', wheel: { rimDiameter: 430 }, front: made, rear: made });
    expect(car[axle].suspension.tolerance).toBe(STARTER_TOLERANCE);
    expect(car[axle].suspension.points.wheelCentre?.[0]).toBe(axle === 'rear' ? -STARTER_WHEELBASE : 0);
  });

  it('stands as it says', () => {
    const { camber, toe } = poseOf(suspension);
    expect(camber).toBeCloseTo(starter.camber, 8);
    expect(toe).toBeCloseTo(starter.toe, 8);
  });

  it('has the caster and SAI of such a car where it has a steering axis', () => {
    const { caster, sai } = poseOf(suspension);
    if (!suspensionKinds[starter.kind]?.steeringAxis) return expect(sai).toBeUndefined();
    expect(caster).toBeGreaterThan(starter.axle === 'front' ? 2 : -2);
    expect(caster).toBeLessThan(8);
    expect(sai).toBeGreaterThan(5);
    expect(sai).toBeLessThan(16);
  });

  it('loses a little camber in bump and hardly steers, where its wheel moves against the body', () => {
    const { bumpSteer, camberGain } = sideEffects(suspension, [], {});
    const { height, rigidAxle } = suspensionKinds[starter.kind]!;
    // Knuckles that a drag link steers are steered by the axle's going up and down.
    if (!height && !rigidAxle?.knuckles) return expect(bumpSteer).toBeUndefined();
    // Degrees over 25 mm. A rigid axle has what its wheels' heights give it.
    const rigid = rigidAxle !== undefined;
    expect(camberGain?.[0]).toBeLessThan(rigid ? 1.2 : -0.1);
    expect(camberGain?.[0]).toBeGreaterThan(-1.2);
    for (const toe of bumpSteer ?? [Number.NaN]) expect(Math.abs(toe)).toBeLessThan(0.25);
    for (const travel of [-60, 60]) expect(solveCorner(suspension, [], {}, { travel }).reachable).toBe(true);
  });
});

it('is there for every kind with points', () => {
  const kinds = Object.values(suspensionKinds).filter(({ points }) => points.length > 0);
  expect(kinds.filter(({ kind }) => startersFor(kind, 'front').length === 0)).toEqual([]);
});

it('offers the layout of the axle first', () => {
  expect(startersFor('double-wishbone', 'rear').map(({ axle }) => axle)).toEqual(['rear', 'front']);
  expect(startersFor('unknown', 'front')).toEqual([]);
});
