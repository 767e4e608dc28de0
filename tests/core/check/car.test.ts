/** A car checked whole: its two sides, its adjusters, its points; each refusal by the place of what is wrong. */
import { describe, expect, it, test } from 'vitest';
import { validateAdjusters } from '../../../core/check/adjusters.ts';
import { validateAxle, validateCar } from '../../../core/check/car.ts';
import { pathOf } from '../../../core/check/refuse.ts';
import { validateSuspension } from '../../../core/check/suspension.ts';
import type { Adjuster, Axle, Suspension } from '../../../core/contract.ts';
import { InputError } from '../../../core/input-error.ts';
import { LAYOUTS, rod, shims, stream } from '../../tools/random-cars.ts';

const suspensionOf = (kind: string): Suspension => ({ kind, points: LAYOUTS[kind] ?? {}, camber: -1, toe: 0.1 });
const axleOf = (kind: string, more: Partial<Axle> = {}): Axle => ({
  ...{ suspension: suspensionOf(kind), adjusters: [], steered: false },
  ...more,
});
const without = (suspension: Suspension, ...names: string[]): Suspension => ({
  ...suspension,
  points: Object.fromEntries(Object.entries(suspension.points).filter(([name]) => !names.includes(name))),
});

/** The field that the work is refused for; nothing where it is not. */
function refused(work: () => unknown): string | undefined {
  try {
    work();
    return undefined;
  } catch (error) {
    expect(error).toBeInstanceOf(InputError);
    return (error as InputError).field;
  }
}

describe('an axle', () => {
  it('may be of two kinds where its sides are apart, not where it is one piece', () => {
    const strut = { rightSuspension: suspensionOf('strut') };
    expect(refused(() => validateAxle(axleOf('double-wishbone', strut)))).toBeUndefined();
    const beam = { rightSuspension: without(suspensionOf('beam-linked'), 'rodBody', 'rodAxle') };
    expect(refused(() => validateAxle(axleOf('beam-linked', beam)))).toBeUndefined();
    expect(refused(() => validateAxle(axleOf('beam-linked', strut)))).toBe('axle.rightSuspension.kind');
    expect(refused(() => validateAxle(axleOf('strut', beam)))).toBe('axle.rightSuspension.kind');
  });

  it('has what it has once with its left side', () => {
    const twice = { rightSuspension: suspensionOf('beam-linked') };
    expect(refused(() => validateAxle(axleOf('beam-linked', twice)))).toBe('axle.rightSuspension.points.rodBody');
  });

  it('has adjusters that fit both sides', () => {
    const clamp = { id: 'clamp', kind: 'clamp-bolt', step: 0.5, range: [-1, 1] as const, reference: 0 };
    const left = { adjusters: [clamp] };
    expect(refused(() => validateAxle(axleOf('strut', left)))).toBeUndefined();
    const both = { ...left, rightSuspension: suspensionOf('double-wishbone') };
    expect(refused(() => validateAxle(axleOf('strut', both)))).toBe('axle.adjusters[0].kind');
  });

  it('comes back with what this version does not know, and only the right side that was given', () => {
    const given = { ...axleOf('strut'), note: 'x' };
    expect(validateAxle(given)).toEqual({ ...given, adjusters: [] });
    expect(validateAxle(given)).not.toHaveProperty('rightSuspension');
    const rightSuspension = { ...suspensionOf('strut'), camber: 1 };
    expect(validateAxle({ ...given, rightSuspension })).toEqual({ ...given, rightSuspension });
  });
});

describe('a right side with adjusters of its own', () => {
  const wishbone = (rightAdjusters: unknown, more: Partial<Axle> = {}) =>
    ({ ...axleOf('double-wishbone', { adjusters: [rod('tie', 'tieInner')], ...more }), rightAdjusters }) as Axle;
  const wedge = { id: 'wedge', kind: 'axle-wedge', degrees: [1, 2], reference: 0 };
  const linked = { ...axleOf('beam-linked'), adjusters: [rod('once', 'rodBody'), rod('link', 'lowerBody')] };

  it('is checked as a list, each refusal by its own place', () => {
    expect(refused(() => validateAxle(wishbone({})))).toBe('axle.rightAdjusters');
    expect(refused(() => validateAxle(wishbone([rod('tie', 'inner1')])))).toBe('axle.rightAdjusters[0].links[0]');
    expect(refused(() => validateAxle(wishbone([rod('a', 'tieInner'), rod('a', 'tieInner')])))).toBe(
      'axle.rightAdjusters[1].id',
    );
    const strut = { rightSuspension: suspensionOf('strut') };
    expect(refused(() => validateAxle(wishbone([shims(stream(1), 'a', 'upperFront')], strut)))).toBe(
      'axle.rightAdjusters[0].at',
    );
    const front = wishbone([shims(stream(1), 'a', 'nowhere')]);
    const car = { id: 'c', label: 'c', wheel: { rimDiameter: 400 }, front, rear: axleOf('strut') };
    expect(refused(() => validateCar(car))).toBe('car.front.rightAdjusters[0].at');
  });

  it('frees the left list of having to fit the right side', () => {
    const clamp = { id: 'clamp', kind: 'clamp-bolt', step: 0.5, range: [-1, 1] as const, reference: 0 };
    const both = { adjusters: [clamp], rightSuspension: suspensionOf('double-wishbone') };
    expect(refused(() => validateAxle(axleOf('strut', both)))).toBe('axle.adjusters[0].kind');
    expect(refused(() => validateAxle(axleOf('strut', { ...both, rightAdjusters: [] })))).toBeUndefined();
  });

  it('comes back whole, an empty one too, and is not there where none was given', () => {
    const own = { ...rod('tie', 'tieInner'), lead: 2, note: 'x' };
    expect(validateAxle(wishbone([own])).rightAdjusters).toEqual([own]);
    expect(validateAxle(wishbone([])).rightAdjusters).toEqual([]);
    expect(validateAxle(wishbone(undefined))).not.toHaveProperty('rightAdjusters');
  });

  it('may name what the axle has once only where the left list has it', () => {
    const right = (...rightAdjusters: Adjuster[]) => refused(() => validateAxle({ ...linked, rightAdjusters }));
    expect(right(...linked.adjusters)).toBeUndefined();
    expect(right(rod('link', 'lowerBody'))).toBeUndefined();
    expect(right(rod('other', 'rodBody'))).toBe('axle.rightAdjusters[0].id');
    // As much where the right side has points of its own, which lack what there is once.
    const rightSuspension = without(suspensionOf('beam-linked'), 'rodBody', 'rodAxle');
    const copied = { ...linked, rightSuspension, rightAdjusters: linked.adjusters };
    expect(refused(() => validateAxle(copied))).toBeUndefined();
  });

  it('has what is one for the whole axle on both sides or on neither', () => {
    const beam = (adjusters: Adjuster[], rightAdjusters: Adjuster[]) =>
      refused(() => validateAxle(axleOf('beam-front', { adjusters, rightAdjusters })));
    expect(beam([wedge], [wedge])).toBeUndefined();
    expect(beam([wedge], [])).toBe('axle.rightAdjusters');
    expect(beam([], [wedge])).toBe('axle.rightAdjusters[0].id');
    expect(beam([], [])).toBeUndefined();
  });
});

describe('the adjusters of a corner', () => {
  const random = stream(5);
  const suspension = suspensionOf('double-wishbone');
  const [front, rear] = [shims(random, 'front', 'upperFront'), shims(random, 'rear', 'upperRear')];
  const tie = rod('tie', 'tieInner');
  const work = (...adjusters: unknown[]) => refused(() => validateAdjusters(adjusters, suspension));

  it('are called as their kind is unless they have a name', () => {
    const { name: _, ...bare } = front;
    const names = validateAdjusters([bare, { ...rear, name: 'mine' }], suspension).map(({ name }) => name);
    expect(names).toEqual(['Shim pack', 'mine']);
  });

  it('are limited against another of their kind, not themselves and not another kind', () => {
    const paired = (other: string): Adjuster => ({ ...front, pair: { with: other, most: 3 } });
    expect(work(paired('rear'), rear, tie)).toBeUndefined();
    for (const other of ['front', 'tie', 'gone']) {
      expect(work(paired(other), rear, tie), other).toBe('adjusters[0].pair.with');
    }
    expect(work(rear, paired('tie'), tie)).toBe('adjusters[1].pair.with');
    expect(work(front, rear, tie)).toBeUndefined();
  });

  it('have ids of their own, the first as well as the last', () => {
    expect(work(front, rear, { ...tie, id: 'front' })).toBe('adjusters[2].id');
    expect(work(front, { ...rear, id: 'front' })).toBe('adjusters[1].id');
    expect(work({ ...front, id: 'constructor' })).toBe('adjusters[0].id');
  });

  it('are no more than a corner can carry', () => {
    const many = (count: number) => Array.from({ length: count }, (_, i) => ({ ...front, id: `${i}` }));
    expect(work(...many(16))).toBeUndefined();
    expect(work(...many(17))).toBe('adjusters');
  });

  it('say where an inner check failed', () => {
    const fine = { ...front, sizes: [0.010001, 0.010003], max: 100 };
    expect(work(tie, fine)).toBe('adjusters[1].sizes');
  });
});

describe('a suspension', () => {
  it('has the points that only some cars have, all or none', () => {
    const linked = suspensionOf('beam-linked');
    const bare = without(linked, 'rodBody', 'rodAxle');
    expect(Object.keys(validateSuspension(linked).points)).toEqual(Object.keys(linked.points));
    expect(validateSuspension(bare)).toEqual(bare);
    expect(refused(() => validateSuspension(without(linked, 'rodAxle')))).toBe('suspension.points.rodAxle');
    expect(refused(() => validateSuspension(without(linked, 'rodBody')))).toBe('suspension.points.rodBody');
  });

  it('has no points and no angles where there is no geometry, and needs them where there is', () => {
    expect(validateSuspension({ kind: 'unknown' })).toEqual({ kind: 'unknown', points: {}, camber: 0, toe: 0 });
    const { points, camber, toe, kind } = suspensionOf('strut');
    expect(refused(() => validateSuspension({ kind, camber, toe }))).toBe('suspension.points');
    expect(refused(() => validateSuspension({ kind, points, toe }))).toBe('suspension.camber');
    expect(refused(() => validateSuspension({ kind, points, camber }))).toBe('suspension.toe');
  });

  it('keeps the tolerance that it was given with, and has none that was not', () => {
    const strut = suspensionOf('strut');
    expect(validateSuspension(strut)).not.toHaveProperty('tolerance');
    expect(validateSuspension({ ...strut, tolerance: 0 }).tolerance).toBe(0);
    expect(refused(() => validateSuspension({ ...strut, tolerance: 201 }))).toBe('suspension.tolerance');
  });

  it('by tape takes camber and toe from beside it or from the tape, the tape first', () => {
    const tape = { caster: 4, camber: 0.2, toe: 0.05 };
    const given = { kind: 'double-wishbone', tape };
    expect(validateSuspension(given)).toMatchObject({ camber: 0.2, toe: 0.05, tape });
    const { camber: _, toe: __, ...less } = tape;
    const beside = { ...given, tape: less, camber: -0.4, toe: 0.1 };
    expect(validateSuspension(beside)).toMatchObject({ camber: -0.4, toe: 0.1 });
    expect(validateSuspension({ ...beside, tape })).toMatchObject({ camber: 0.2, toe: 0.05 });
    expect(refused(() => validateSuspension({ ...beside, camber: undefined }))).toBe('suspension.tape.camber');
    expect(refused(() => validateSuspension({ ...beside, toe: undefined }))).toBe('suspension.tape.toe');
    expect(validateSuspension({ ...given, tolerance: 1.5 }).tolerance).toBe(1.5);
  });

  it('by points and by tape is as its points say', () => {
    const both = { ...suspensionOf('double-wishbone'), tape: { caster: 9 } };
    expect(validateSuspension(both)).toEqual(both);
  });
});

describe('a car', () => {
  const axle = axleOf('strut');
  const car = { id: 'c', label: 'A car', wheel: { rimDiameter: 430 }, front: axle, rear: axle };

  test.each([
    ['plate', 'x'.repeat(40), 'x'.repeat(41)],
    ['plate', '', 7],
    ['notes', 'x'.repeat(4000), 'x'.repeat(4001)],
    ['label', 'x'.repeat(400), 'x'.repeat(401)],
    ['id', 'x', 'valueOf'],
  ])('takes a %s up to its limit and no further', (field, good, bad) => {
    expect(validateCar({ ...car, [field]: good })).toEqual({ ...car, [field]: good });
    expect(refused(() => validateCar({ ...car, [field]: bad }))).toBe(`car.${field}`);
  });

  test.each([
    ['front', { ...axle, steered: undefined }, 'car.front.steered'],
    ['rear', { ...axle, suspension: undefined }, 'car.rear.suspension'],
    ['wheel', { rimDiameter: 430, tyre: 1 }, 'car.wheel.tyre'],
    ['wheel', { rimDiameter: 99 }, 'car.wheel.rimDiameter'],
  ])('with a %s of %j is refused', (field, value, place) => {
    expect(refused(() => validateCar({ ...car, [field]: value }))).toBe(place);
  });
});

test.each([
  ['front', ['adjusters', 0, 'at'], 'front.adjusters[0].at'],
  ['', ['visits', 1, 'rounds', 2], 'visits[1].rounds[2]'],
  ['file', [], 'file'],
])('under %j the keys %j are written %s', (field, keys, path) => {
  expect(pathOf(field, keys)).toBe(path);
});
