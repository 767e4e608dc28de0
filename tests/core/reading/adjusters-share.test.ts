/** A side that leans because of its shims is not bent, and one whose shims hide what is bent is. */
import { describe, expect, it, test } from 'vitest';
import type { Adjuster, Car, CarSettings, Reading, Settings, Spec, Suspension } from '../../../core/contract.ts';
import { adjusterPositions, adjustersOf, assess, hintsOfFile, solveCorner } from '../../../core/index.ts';
import { eccentric, numbered, oneOf, randomSuspension, rod, shims, stream } from '../../tools/random-cars.ts';
import { carFile } from '../records/fixture.ts';

const SPEC: Spec = { front: { camber: { low: -0.8, high: 0.2 } } };
const PACK = { kind: 'shim-pack', direction: [0, 1, 0], sizes: [0.8], max: 16, reference: 4.8 } as const;
const ARM: readonly Adjuster[] = [
  { ...PACK, id: 'front', name: 'front shims', at: 'upperFront' },
  { ...PACK, id: 'rear', name: 'rear shims', at: 'upperRear' },
  rod('rod', 'tieInner'),
];
const BOTH = { front: 4.8, rear: 4.8 };

const carWith = (
  adjusters: readonly Adjuster[] = ARM,
  suspension = carFile('tarn-gt.json').car.front.suspension,
): Car => {
  const { car } = carFile('tarn-gt.json');
  return { ...car, front: { suspension, adjusters, steered: true } };
};
/** What a rack reads of a corner: its true shape, which need not be what is on file, and where its adjusters stand. */
function wheel(shape: Suspension, adjusters: readonly Adjuster[], at: Settings) {
  const pose = solveCorner(shape, adjusters, at);
  if (!pose.reachable) throw new Error('no pose');
  const { camber, caster, sai, toe } = pose;
  return { camber, toe, ...(caster === undefined ? {} : { caster }), ...(sai === undefined ? {} : { sai }) };
}
const straight = (car: Car, settings: CarSettings): Reading => ({
  LF: wheel(car.front.suspension, adjustersOf(car, 'LF'), settings.LF ?? {}),
  RF: wheel(car.front.suspension, adjustersOf(car, 'RF'), settings.RF ?? {}),
});

describe('4.8 mm less shim on one side', () => {
  const car = carWith();
  const settings: CarSettings = { LF: { front: 0, rear: 0 }, RF: BOTH };
  const reading = straight(car, settings);

  it('looks like something bent to who does not know of it', () => {
    expect(assess(reading, SPEC, { kinds: { front: 'double-wishbone' } }).hints).not.toEqual([]);
  });

  it('is no bent arm where the car and the shims are known', () => {
    expect(assess(reading, SPEC, { car, settings }).hints).toEqual([]);
  });

  it('is a matter of looking at the packs where nobody knows what is in them', () => {
    const unknown = [{ corner: 'LF', adjuster: 'front' } as const, { corner: 'LF', adjuster: 'rear' } as const];
    const [hint, ...more] = assess(reading, SPEC, { car, settings: { LF: BOTH, RF: BOTH }, unknown }).hints;
    expect(more).toEqual([]);
    expect(hint).toMatchObject({ where: 'front', kind: 'places-first' });
    expect(hint?.text).toContain('LF front shims and LF rear shims');
    expect(hint?.text).not.toMatch(/knuckle|spindle/);
    // Without settings nothing is known of any of them.
    expect(assess(reading, SPEC, { car }).hints.map(({ kind }) => kind)).toEqual(['places-first']);
  });
});

describe('a bent lower arm', () => {
  const car = carWith();
  // Pulled in by 14 mm at the ball: the top leans out, and the axis stands steeper by as much.
  const { points } = car.front.suspension;
  const [x, y, z] = points.lowerBall!;
  const [tx, ty, tz] = points.tieOuter!;
  const bent: Suspension = {
    ...car.front.suspension,
    camber: car.front.suspension.camber + 2.8,
    points: { ...points, lowerBall: [x, y - 14, z], tieOuter: [tx, ty - 11, tz] },
  };

  it('is still told where the adjusters stand alike', () => {
    const settings = { LF: BOTH, RF: BOTH };
    const reading = { ...straight(car, settings), LF: wheel(bent, ARM, BOTH) };
    const known = assess(reading, SPEC, { car, settings }).hints;
    expect(known).toEqual(assess(reading, SPEC, { kinds: { front: 'double-wishbone' } }).hints);
    expect(known[0]).toMatchObject({ where: 'LF', kind: 'pattern', look: 'lower-arm' });
  });

  it('is told where shims hide it', () => {
    const settings = { LF: { front: 0, rear: 0 }, RF: BOTH };
    const reading = { ...straight(car, settings), LF: wheel(bent, ARM, settings.LF) };
    const spec: Spec = { front: { camber: { low: -1.1, high: reading.RF!.camber! + 0.1 } } };
    expect(assess(reading, spec, { car, settings }).hints).toMatchObject([{ where: 'LF', look: 'lower-arm' }]);
  });

  it('is told of a car file as of its last round', () => {
    const settings = { LF: BOTH, RF: BOTH };
    const reading = { ...straight(car, settings), LF: wheel(bent, ARM, BOTH) };
    const rounds = [{ reading, settings, moved: [{ corner: 'LF', adjuster: 'front', from: 4.8, to: 0 } as const] }];
    const visits = [{ id: 'v', carId: car.id, opened: '2026-01-01', rounds }];
    const file = { format: 'cornerwright', version: 1, car, spec: SPEC, visits } as const;
    expect(hintsOfFile(file)).toEqual(assess(reading, SPEC, { car, settings }).hints);
    const all = [...ARM.map(({ id }) => ({ corner: 'LF' as const, adjuster: id }))];
    expect(hintsOfFile(file, all).map(({ kind }) => kind)).toEqual(['places-first']);
  });
});

test('no straight car is called bent, wherever its adjusters stand', () => {
  let differed = 0;
  for (let seed = 1; seed <= 60; seed++) {
    const random = stream(seed);
    const make = [shims, numbered, eccentric];
    const adjusters = [
      oneOf(random, make)(random, 'first', 'upperFront'),
      oneOf(random, make)(random, 'second', 'upperRear'),
      rod('rod', 'tieInner'),
    ];
    const car = carWith(adjusters, randomSuspension(random, 'double-wishbone'));
    const any = (corner: 'LF' | 'RF') =>
      Object.fromEntries(
        adjustersOf(car, corner)
          .slice(0, 2)
          .map((one) => [one.id, oneOf(random, adjusterPositions(one))]),
      );
    const settings = { LF: any('LF'), RF: any('RF') };
    const reading = straight(car, settings);
    const guessed = assess(reading, SPEC, { kinds: { front: 'double-wishbone' } }).hints;
    if (guessed.length > 0) differed++;
    expect([seed, ...assess(reading, SPEC, { car, settings }).hints]).toEqual([seed]);
  }
  expect(differed).toBeGreaterThan(15);
});

test('what a chart adds to camber on one side may be SAI’s loss: nothing is made of it', () => {
  const chart: Adjuster = {
    id: 'kit',
    name: 'kit',
    kind: 'effect-table',
    reference: 'A',
    positions: [
      { label: 'A', camber: 0 },
      { label: 'B', camber: 1.5 },
    ],
  };
  const car: Car = { ...carWith([chart], { kind: 'unknown', points: {}, camber: 0, toe: 0 }) };
  const settings = { LF: { kit: 'B' }, RF: { kit: 'A' } };
  for (const sai of [12, 10.5]) {
    const reading = { LF: { camber: 1.5, sai }, RF: { camber: 0, sai: 12 } };
    expect(assess(reading, SPEC, { car, settings }).hints).toEqual([]);
  }
  // Alike on both sides it explains nothing.
  const same = { LF: { kit: 'B' }, RF: { kit: 'B' } };
  const reading = { LF: { camber: 1.5, sai: 10.5 }, RF: { camber: 0, sai: 12 } };
  expect(assess(reading, SPEC, { car, settings: same }).hints).toMatchObject([{ where: 'LF', look: 'moved-pivot' }]);
});

test('an adjuster that the car does not have is refused', () => {
  const car = carWith();
  const unknown = [{ corner: 'LF', adjuster: 'nothing' } as const];
  expect(() => assess({}, {}, { car, settings: {}, unknown })).toThrow(/^unknown\[0\]\.adjuster: "nothing"/);
});
