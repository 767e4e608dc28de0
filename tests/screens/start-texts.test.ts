/**
 * A new car by its pictures, as texts of the build card: what they make is a whole car file; its windows as they are typed;
 * a rear axle's points from its own hub; lengths that were measured of it.
 */
import { describe, expect, it, vi } from 'vitest';
import type { AxleName } from '../../core/contract.ts';
import { validateCarFile } from '../../core/index.ts';
import type { CarRecord } from '../../core/records/stored.ts';
import { startersFor } from '../../core/starters/catalogue.ts';
import { fitmentsFor } from '../../core/starters/fitments.ts';
import { suspensionFromStarter } from '../../core/starters/starter.ts';
import { suspensionKinds } from '../../core/suspension/catalogue.ts';
import { lengthIn, lengthsOf } from '../../core/suspension/tape/measure.ts';

// The app's preferences set the look of the page when they load.
const page = { documentElement: { dataset: {} }, addEventListener: () => undefined };
vi.stubGlobal('document', page);
vi.stubGlobal('addEventListener', page.addEventListener);
vi.stubGlobal('location', { hash: '' });
const start = await import('../../app/screens/build/start-texts.ts');
const { fileOf, textsOf } = await import('../../app/screens/build/car-texts.ts');
const { isByTape, isUsual, measuredPath } = await import('../../app/screens/build/suspension-texts.ts');
const isBuildText = (key: string): boolean => /^(car|spec)\./.test(key);

type Texts = Readonly<Record<string, string>>;
const AXLES = ['front', 'rear'] as const;
const layouts = AXLES.flatMap((axle) => start.LAYOUTS[axle].map((kind) => [axle, kind] as const));

/** Both axles picked, with all that each may have but what it has one of. */
function pickedCar(front: string, rear: string): Texts {
  let texts: Texts = { 'car.label': 'Ostler' };
  for (const [axle, kind] of [
    ['front', front],
    ['rear', rear],
  ] as const) {
    texts = { ...texts, ...start.picked(texts, axle, kind) };
    for (const one of fitmentsFor(kind, axle)) {
      const rest = Object.entries(texts).filter(([key]) => !key.startsWith(`car.${axle}.adjusters[`));
      texts = { ...Object.fromEntries(rest), ...start.fitted(texts, axle, one) };
    }
  }
  return texts;
}
const cellTexts = (texts: Texts, values: readonly string[]): Texts =>
  Object.fromEntries(start.cellsOf(texts).map(({ id }, i) => [id, values[i] ?? '']));
const checked = (texts: Texts) => validateCarFile(JSON.parse(JSON.stringify(fileOf(texts, 'c', undefined))));
const recordOf = (texts: Texts): CarRecord => {
  const { car, spec = {} } = checked(texts);
  return { id: 'c', car, spec, changed: '2026-01-01' };
};

describe('a new car by its pictures', () => {
  it.each(layouts)('%s, %s: is the usual layout with usual adjusters', (axle, kind) => {
    expect(suspensionKinds[kind]).toBeDefined();
    const other = axle === 'front' ? 'beam-rear' : 'strut';
    const { car } = checked(axle === 'front' ? pickedCar(kind, other) : pickedCar(other, kind));
    expect(car[axle].suspension).toEqual(suspensionFromStarter(startersFor(kind, axle)[0]!, axle));
    expect(car[axle].steered).toBe(axle === 'front');
    // Of those that a car has one of, the last that was picked.
    const all = fitmentsFor(kind, axle);
    const fitted = all.filter((one) => !one.oneOf || all.findLast(({ oneOf }) => oneOf === one.oneOf) === one);
    expect(car[axle].adjusters).toEqual(fitted.flatMap(({ adjusters }) => adjusters));
    expect(
      car[axle].adjusters.some(({ usual }) => usual) ||
        !fitted.some(({ adjusters }) => adjusters.some(({ usual }) => usual)),
    ).toBe(true);
  });

  it('is taken off again by a second touch, and goes with its layout', () => {
    const texts = pickedCar('strut', 'five-link');
    const [first] = fitmentsFor('five-link', 'rear');
    expect(start.fittedOn(texts, 'rear')).toContain(first!.id);
    expect(start.fitted(texts, 'rear', first!)['@fitted.rear']).not.toContain(first!.id);
    expect(start.picked(texts, 'rear', 'strut')['@fitted.rear']).toBe('');
  });

  it('is the same car when the card is opened and nothing is typed', () => {
    const record = recordOf({ ...pickedCar('double-wishbone', 'five-link') });
    const again = validateCarFile(JSON.parse(JSON.stringify(fileOf(textsOf(record), 'c', record))));
    expect(again.car).toEqual(record.car);
    const afresh = validateCarFile(JSON.parse(JSON.stringify(fileOf(textsOf(record), 'c', undefined))));
    expect(afresh.car.rear).toEqual(record.car.rear);
  });

  it('is as large as the car is known to be', () => {
    const texts = {
      ...pickedCar('strut', 'five-link'),
      'car.wheelbase': '2800',
      [start.TRACK]: '1600',
      'car.tyres': '205/55R16, 2.3 bar',
    };
    const { car } = checked({ ...texts, ...start.resized(texts) });
    // Half the rim and four fifths of the section: 203.2 + 0.8 × 112.75.
    expect(car.rear.suspension.points.wheelCentre!.map((x) => Number(x.toFixed(4)))).toEqual([-2800, 800, 293.4]);
    const nonsense = { ...texts, 'car.wheelbase': 'long', [start.TRACK]: '1', 'car.tyres': 'new' };
    expect(start.knownOf(nonsense)).toEqual({ wheelbase: undefined, track: undefined, wheelHeight: undefined });
  });
});

describe('its windows', () => {
  const texts = pickedCar('double-wishbone', 'five-link');
  const spec = (more: Texts) => checked({ ...texts, ...more, ...start.windowsIn({ ...texts, ...more }) }).spec;

  it('are typed as aim and ±, as the maker prints them', () => {
    expect(start.cellsOf(texts).map(({ id }) => id.slice(6))).toEqual(
      ['front.caster', 'front.camber', 'front.toe', 'rear.camber', 'rear.toe'].flatMap((one) => [
        `aim.${one}`,
        `half.${one}`,
      ]),
    );
    const { front, rear } = spec(
      cellTexts(texts, ['4.50', '0.40', '−0.50', '0.25', '0.08', '−0.08', '', '', '0.15', '0.08']),
    )!;
    expect(front!.caster).toEqual({ low: 4.1, aim: 4.5, high: 4.9 });
    expect(front!.camber).toEqual({ low: -0.75, aim: -0.5, high: -0.25 });
    // How far it may be off has no sign.
    expect(front!.toe!.low).toBeCloseTo(0, 12);
    expect(rear).not.toHaveProperty('camber');
    expect(rear!.toe!.high).toBeCloseTo(0.23, 12);
  });

  it('or as low and high, toe of both wheels together', () => {
    const total = { ...texts, [start.ENDS]: 'yes', [start.TOTAL]: 'yes' };
    const cells = cellTexts(total, ['4', '5', '−1', '0', '0.05', '0.25']);
    const { front } = spec({ ...total, ...cells })!;
    expect(front).toEqual({
      caster: { low: 4, high: 5 },
      camber: { low: -1, high: 0 },
      totalToe: { low: 0.05, high: 0.25 },
    });
  });

  it('are none where nothing is typed, and what is half typed is kept and refused by name', () => {
    expect(spec({})?.front ?? {}).toEqual({});
    const half = cellTexts(texts, ['4.50']);
    expect(() => spec(half)).toThrow(/spec\.front\.caster/);
  });

  it('has no caster where the wheels do not steer', () => {
    expect(start.anglesOf(texts, 'rear')).toEqual(['camber', 'toe']);
  });
});

describe('a rear axle’s points', () => {
  const record = recordOf(pickedCar('strut', 'five-link'));
  const path = 'car.rear.suspension';

  it('are typed from its own hub, which stays where it is', () => {
    const texts = textsOf(record);
    expect(texts[`${path}.points.outer1[0]`]).toBe('31');
    expect(texts[`${path}.points.wheelCentre[0]`]).toBe('0');
    const typed = fileOf({ ...texts, [`${path}.points.outer1[0]`]: '40' }, 'c', record);
    const { points } = validateCarFile(JSON.parse(JSON.stringify(typed))).car.rear.suspension;
    expect(points.outer1).toEqual([-2600, 676, 481]);
    expect(points.inner1).toEqual(record.car.rear.suspension.points.inner1);
    expect(points.wheelCentre).toEqual(record.car.rear.suspension.points.wheelCentre);
  });

  it('of a draft of before are counted from the front axle, as they were typed', () => {
    const { [`${path}.behind`]: _, ...before } = textsOf(record);
    const old = { ...before, [`${path}.points.outer1[0]`]: '−2609', [`${path}.points.wheelCentre[0]`]: '−2640' };
    const { points } = (fileOf(old, 'c', undefined).car.rear as { suspension: { points: Record<string, number[]> } })
      .suspension;
    expect(points.outer1).toEqual([-2609, 676, 481]);
    expect(points.wheelCentre).toEqual([-2640, 768, 314]);
  });

  it('by tape stand where the wheelbase has them, and nobody is asked for that', () => {
    const texts = {
      ...pickedCar('strut', 'beam-rear'),
      'car.rear.suspension.kind': 'five-link',
      'car.rear.suspension.way': 'tape',
      'car.rear.suspension.tape.camber': '-1',
      'car.rear.suspension.tape.toe': '0.1',
      'car.wheelbase': '2700',
    };
    expect(checked(texts).car.rear.suspension.points.wheelCentre).toEqual([-2700, 768, 314]);
  });

  it('typed before five links had a tape are still points', () => {
    expect(isByTape({ [`${path}.kind`]: 'five-link' }, path)).toBe(true);
    expect(isByTape({ [`${path}.kind`]: 'five-link', [`${path}.points.inner1[0]`]: '1' }, path)).toBe(false);
  });
});

describe('a length that was measured of a usual layout', () => {
  const path = (axle: AxleName) => `car.${axle}.suspension`;
  const record = recordOf(pickedCar('double-wishbone', 'five-link'));
  const name = 'upperFrontLength';
  const own = (points: CarRecord['car']['front']['suspension']['points']) =>
    lengthIn(lengthsOf('double-wishbone').find((one) => one.name === name)!, points);

  it('is typed on its card, comes with the car and stays to the last digit', () => {
    const texts = { ...textsOf(record), [measuredPath(path('front'), name)]: '251.5' };
    expect(isUsual(texts, path('front'))).toBe(true);
    const file = validateCarFile(JSON.parse(JSON.stringify(fileOf(texts, 'c', record))));
    expect(file.car.front.suspension.measured).toEqual({ [name]: 251.5 });
    expect(own(file.car.front.suspension.points)).toBeCloseTo(251.5, 9);
    const kept = { ...record, car: file.car };
    expect(validateCarFile(JSON.parse(JSON.stringify(fileOf(textsOf(kept), 'c', kept)))).car).toEqual(file.car);
    const gone = { ...textsOf(kept), [measuredPath(path('front'), name)]: '' };
    expect(
      validateCarFile(JSON.parse(JSON.stringify(fileOf(gone, 'c', kept)))).car.front.suspension,
    ).not.toHaveProperty('measured');
  });

  it('is for no axle that was taped, or whose points are known', () => {
    const texts = textsOf(record);
    expect(isUsual({ ...texts, [`${path('front')}.tolerance`]: '5' }, path('front'))).toBe(false);
    expect(isUsual({ ...texts, [`${path('front')}.tolerance`]: '' }, path('front'))).toBe(false);
    expect(isUsual({ ...texts, [`${path('front')}.way`]: 'tape' }, path('front'))).toBe(false);
  });

  it('names nothing that is not the card’s', () => {
    expect(Object.keys(textsOf(record)).filter((key) => !isBuildText(key))).toEqual([]);
  });
});
