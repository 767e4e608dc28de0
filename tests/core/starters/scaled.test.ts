/**
 * A layout that is scaled by what everyone knows. Tyre sizes: nominal overall diameters as tyre tables print them (the
 * ETRTO Standards Manual, ISO 4000-1), whole mm, from memory; that the arithmetic is section height twice and the rim is
 * what these standards say.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AxleName } from '../../../core/contract.ts';
import { starters } from '../../../core/starters/catalogue.ts';
import { STARTER_TOLERANCE, suspensionFromStarter } from '../../../core/starters/starter.ts';
import { tyreOf } from '../../../core/starters/tyre.ts';
import { suspensionKinds } from '../../../core/suspension/catalogue.ts';
import { poseOf } from '../../tools/pose.ts';

describe('a tyre', () => {
  it.each([
    ['205/55R16', 632],
    ['195/65 R 15', 635],
    ['225/45ZR17', 634],
    ['175/65R14 82T', 583],
    ['235/65R17', 737],
    ['275/30R20', 673],
  ])('%s is as large as the tables print it: %d mm', (size, diameter) => {
    expect(Math.round(tyreOf(size)?.overallDiameter ?? Number.NaN)).toBe(diameter);
  });

  it('is found in what a job card says of tyres and pressures', () => {
    const tyre = tyreOf('Winter, 205/55 R16 91H, 2.3 bar front, 2.1 bar rear');
    expect(tyre).toMatchObject({ sectionWidth: 205, aspectRatio: 55 });
    expect(tyre?.rimDiameter).toBeCloseTo(406.4, 9);
  });

  it('without a ratio has a full section, and a bias one is as good', () => {
    expect(tyreOf('165R13')?.aspectRatio).toBe(82);
    expect(tyreOf('195/70-14')?.rimDiameter).toBeCloseTo(355.6, 9);
  });

  it.each(['', 'summer', '2.3 bar', '205', '205/55', '999/55R16', '205/05R16', '205/55R99', '12345/55R16x'])(
    'is none in “%s”',
    (text) => {
      expect(tyreOf(text)).toBeUndefined();
    },
  );

  it('stands lower under its load than unloaded, and higher than its rim', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 135, max: 335 }),
        fc.integer({ min: 25, max: 85 }),
        fc.integer({ min: 12, max: 24 }),
        (w, r, d) => {
          const tyre = tyreOf(`${w}/${r}R${d}`)!;
          expect(tyre.loadedRadius).toBeLessThan(tyre.overallDiameter / 2);
          expect(tyre.loadedRadius).toBeGreaterThan(tyre.rimDiameter / 2);
        },
      ),
    );
  });
});

const named = starters.map((one) => [`${one.kind}, ${one.name}`, one] as const);
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe.each(named)('%s, scaled', (_, starter) => {
  it('is the layout itself where nothing is known', () => {
    for (const axle of ['front', 'rear'] as AxleName[]) {
      expect(suspensionFromStarter(starter, axle, {})).toEqual(suspensionFromStarter(starter, axle));
    }
  });

  it('has the wheel where the car has it, stands as the layout does and is no better known', () => {
    fc.assert(
      fc.property(between(1250, 1850), between(240, 420), between(1900, 3800), (track, wheelHeight, wheelbase) => {
        const made = suspensionFromStarter(starter, 'rear', { track, wheelHeight, wheelbase });
        const [x, y, z] = made.points.wheelCentre!;
        expect([x, 2 * y, z].map((one) => Number(one.toFixed(6)))).toEqual(
          [-wheelbase, track, wheelHeight].map((one) => Number(one.toFixed(6))),
        );
        expect(made.tolerance).toBe(STARTER_TOLERANCE);
        const { camber, toe, caster } = poseOf(made);
        expect(camber).toBeCloseTo(starter.camber, 7);
        expect(toe).toBeCloseTo(starter.toe, 7);
        // It leans as it did, but for what is wider and not higher.
        const before = poseOf(suspensionFromStarter(starter, 'rear')).caster;
        if (suspensionKinds[starter.kind]?.steeringAxis) expect(Math.abs(caster! - before!)).toBeLessThan(5);
      }),
      { numRuns: 15 },
    );
  });
});
