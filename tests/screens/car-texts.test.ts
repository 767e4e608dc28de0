/**
 * The build card is texts: every kind of suspension and adjuster goes onto it and comes back, typed again to within the
 * digits that are shown, and exactly where it was not touched. Runs over the catalogues, so that a new kind joins.
 */
import { describe, expect, it, vi } from 'vitest';
import type { Adjuster, Axle, Car, Spec } from '../../core/contract.ts';
import { adjusterKinds, suspensionKinds, validateCarFile } from '../../core/index.ts';
import type { CarRecord } from '../../core/records/stored.ts';
import { LAYOUTS, randomSuspension, rod, stream } from '../tools/random-cars.ts';
import { FITTING, sampleAdjuster } from '../tools/samples.ts';

// The app's preferences set the look of the page when they load.
const page = { documentElement: { dataset: {} }, addEventListener: () => undefined };
vi.stubGlobal('document', page);
vi.stubGlobal('addEventListener', page.addEventListener);
vi.stubGlobal('location', { hash: '' });
const { adjusterTexts, fileOf, textsOf } = await import('../../app/screens/build/car-texts.ts');
const { planeOf, saidOf } = await import('../../app/screens/build/cam-round.tsx');
const { roundPlaces } = await import('../../app/screens/build/table.tsx');
const { copyOf, rightList } = await import('../../app/screens/build/new-adjuster.ts');
const { aroundAim, axleWindowsOf, axleWindowTexts, typedWindow, withSides } = await import(
  '../../app/screens/build/window-texts.ts'
);
const { useCardUnits } = await import('../../app/screens/build/numbers.ts');

const REST: Axle = {
  suspension: { kind: 'beam-rear', points: { wheelCentre: [-2601.123456789, 770, 320] }, camber: 0.123456789, toe: 0 },
  adjusters: [],
  steered: false,
};
const SPEC: Spec = {
  front: {
    camber: { low: -1, high: -0.125 },
    toe: { low: 1 / 30, high: 1 / 3 },
    left: { camber: { low: -2, high: 0 } },
  },
  rear: {
    thrustAngle: { low: -0.1, aim: 0.0123456789, high: 0.1 },
    pinionChange: { low: -1 / 3, high: 0.25 },
    lateralChange: { low: -2.5, aim: 1 / 7, high: 4 },
  },
};
const recordOf = (front: Axle, spec = SPEC): CarRecord => {
  const car: Car = {
    id: 'c',
    label: 'Marl estate',
    plate: 'A 1',
    customer: 'M. Ostler',
    vin: 'PRACTICE 0001',
    tyres: '205/55 R16, 2.3 front and 2.1 rear',
    wheel: { rimDiameter: 431.8 },
    wheelbase: 2601.1234567,
    steeringRatio: 15.7,
    front,
    rear: REST,
  };
  const checked = validateCarFile({ format: 'cornerwright', version: 1, car, spec });
  return { id: 'c', car: checked.car, spec: checked.spec ?? {}, changed: '2025-01-01' };
};
const checked = (file: unknown) => validateCarFile(JSON.parse(JSON.stringify(file)));

/** Each with a seed of its own. */
const CASES = FITTING.map(({ suspension, adjuster }, i) => [suspension, adjuster, 77 + i] as const);

describe('a car on the build card', () => {
  it.each(CASES)('%s with %s is the same car when nothing is typed', (kind, adjuster, seed) => {
    const random = stream(seed);
    const suspension = randomSuspension(random, kind);
    const own = {
      ...sampleAdjuster(random, adjuster, suspension, 'one'),
      name: 'One',
      torque: 'see the book',
      own: [1],
    };
    const record = recordOf({ suspension, adjusters: [own], steered: true });
    const { car, spec } = checked(fileOf(textsOf(record), 'c', record));
    expect(car).toEqual(record.car);
    expect(spec?.rear).toEqual(record.spec.rear);
  });

  it.each(CASES)('%s with %s typed afresh is it to the digits shown', (kind, adjuster, seed) => {
    const random = stream(seed);
    const suspension = randomSuspension(random, kind);
    const own = { ...sampleAdjuster(random, adjuster, suspension, 'one'), name: 'One' };
    const { once = [] } = suspensionKinds[kind]?.rigidAxle ?? {};
    const right = Object.fromEntries(Object.entries(suspension.points).filter(([name]) => !once.includes(name)));
    const rightSuspension = { ...suspension, points: right };
    const record = recordOf({ suspension, adjusters: [own], rightSuspension, steered: false });
    const { car } = checked(fileOf(textsOf(record), 'c', undefined));
    expect(car).toEqual(near(record.car));
  });

  it('keeps the right side’s own list, an empty one too, and drops it where the right is the mirror again', () => {
    const random = stream(78);
    const suspension = randomSuspension(random, 'double-wishbone');
    const [left, right] = ['left', 'right'].map((id) => ({ ...rod(id, 'tieInner'), torque: 'see the book', own: [1] }));
    const record = recordOf({ suspension, adjusters: [left!], rightAdjusters: [right!], steered: true });
    const texts = textsOf(record);
    expect(checked(fileOf(texts, 'c', record)).car).toEqual(record.car);
    const none = recordOf({ suspension, adjusters: [left!], rightAdjusters: [], steered: true });
    expect(checked(fileOf(textsOf(none), 'c', none)).car.front.rightAdjusters).toEqual([]);
    const mirror = { ...texts, 'car.front.rightList': '' };
    expect(checked(fileOf(mirror, 'c', record)).car.front).not.toHaveProperty('rightAdjusters');
    const typed = { ...texts, 'car.front.rightAdjusters[0].lead': '2' };
    const { front } = checked(fileOf(typed, 'c', record)).car;
    expect([front.adjusters[0]?.lead, front.rightAdjusters?.[0]?.lead]).toEqual([1.5, 2]);
  });

  it('takes a steering ratio with and without its “to 1”, none too, and refuses any other by name', () => {
    const record = recordOf({ suspension: randomSuspension(stream(79), 'strut'), adjusters: [], steered: true });
    const withRatio = (text: string) => fileOf({ ...textsOf(record), 'car.steeringRatio': text }, 'c', record);
    for (const text of ['16', '16:1', ' 16 : 1 ', '16,0']) expect(checked(withRatio(text)).car.steeringRatio).toBe(16);
    expect(checked(withRatio('')).car).not.toHaveProperty('steeringRatio');
    for (const text of ['3.9', '40.1', '16:2', 'quick'])
      expect(() => checked(withRatio(text))).toThrow('car.steeringRatio');
  });

  it('begins a right list as the left one, less what the axle has once, and keeps what the card does not ask', () => {
    const suspension = { kind: 'beam-linked', points: LAYOUTS['beam-linked']!, camber: 0, toe: 0 };
    const once = rod('once', 'rodBody');
    const record = recordOf({
      suspension,
      adjusters: [once, { ...rod('link', 'lowerBody'), own: [1] }],
      steered: false,
    });
    const texts = textsOf(record);
    const copied = rightList(texts, 'front');
    expect(copied).toEqual(adjusterTexts(record.car.front.adjusters[1]!, 'car.front.rightAdjusters[0]'));
    const { front } = checked(fileOf({ ...texts, ...copied, 'car.front.rightList': 'own' }, 'c', record)).car;
    expect(front.rightAdjusters).toEqual([record.car.front.adjusters[1]]);
    expect(front.adjusters).toEqual(record.car.front.adjusters);
  });

  it('covers every kind', () => {
    expect(new Set(CASES.map(([kind]) => kind))).toEqual(new Set(Object.keys(suspensionKinds)));
    expect(new Set(CASES.map(([, kind]) => kind))).toEqual(new Set(Object.keys(adjusterKinds)));
  });

  it('keeps a direction that has no word when another field is edited', () => {
    const suspension = randomSuspension(stream(77), 'double-wishbone');
    const direction = [1 / 3, Math.SQRT1_2, -0.1234567890123];
    const shim: Adjuster = {
      id: 's',
      name: 'S',
      kind: 'shim-pack',
      at: 'upperFront',
      direction,
      sizes: [1 / 64],
      max: 9,
      reference: 0,
    };
    const record = recordOf({ suspension, adjusters: [shim], steered: true });
    const texts = { ...textsOf(record), 'car.front.adjusters[0].max': '12' };
    const [back] = checked(fileOf(texts, 'c', record)).car.front.adjusters;
    expect(back).toMatchObject({ direction, sizes: [1 / 64], max: 12 });
    const typed = { ...texts, 'car.front.adjusters[0].direction[2]': '0,5' };
    expect(checked(fileOf(typed, 'c', record)).car.front.adjusters[0]?.direction[2]).toBe(0.5);
  });

  it('has the windows of each side when they differ, and one again when not', () => {
    const record = recordOf({ suspension: randomSuspension(stream(77), 'strut'), adjusters: [], steered: true });
    const texts = textsOf(record);
    const { front } = checked(fileOf(texts, 'c', record)).spec ?? {};
    expect(front?.left?.camber).toEqual({ low: -2, high: 0 });
    expect(front?.right?.camber).toEqual(SPEC.front?.camber);
    expect(front?.right?.toe).toEqual(SPEC.front?.toe);
    const one = { ...texts, ...withSides(texts, 'spec.front', false) };
    expect(checked(fileOf(one, 'c', undefined)).spec?.front).toMatchObject({ camber: { low: -2, high: 0 } });
    const again = { ...one, ...withSides(one, 'spec.front', true) };
    expect(checked(fileOf(again, 'c', record)).spec?.front).toEqual(front);
  });

  it('keeps the points that a tape gave, and each tolerance with its dimension, while another is edited', () => {
    const tape = { caster: 4, camber: -0.5, toe: 0.1, track: { value: 1501.5, tolerance: 2 }, tie: 'ahead' };
    const suspension = { kind: 'double-wishbone', tape } as unknown as Axle['suspension'];
    const record = recordOf({ suspension, adjusters: [], steered: true });
    expect(checked(fileOf(textsOf(record), 'c', record)).car.front).toEqual(record.car.front);
    const texts = { ...textsOf(record), 'car.front.suspension.tape.sai': '9.5' };
    const { suspension: edited } = checked(fileOf(texts, 'c', record)).car.front;
    expect(edited.tape).toEqual({ ...tape, sai: 9.5 });
    expect(edited.points).not.toEqual(record.car.front.suspension.points);
  });
});

/** The same with every number to the five digits after the point that a text has at the least. */
function near(value: unknown): unknown {
  if (typeof value === 'number') return expect.closeTo(value, 5);
  if (Array.isArray(value)) return value.map(near);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, near(one)]));
}

describe('a window typed as the maker prints it', () => {
  const at = 'spec.front.camber';
  const typed = (texts: Readonly<Record<string, string>>, end: string, text: string) => ({
    ...texts,
    ...typedWindow(texts, at, `${at}.${end}`, text, 'camber', undefined),
  });
  const windows = (texts: Readonly<Record<string, string>>) =>
    axleWindowsOf(texts, 'spec.front', { now: undefined, before: undefined }, undefined);

  it.each(['−0.5 ± 0.75', '-0,5+/-0,75', '−0°30′ ± 0°45′'])('%s gives low, aim and high, and is shown back', (text) => {
    const texts = typed({}, 'aim', text);
    expect(windows(texts)).toEqual({ camber: { low: -1.25, aim: -0.5, high: 0.25 } });
    const back = axleWindowTexts({ camber: { low: -1.25, aim: -0.5, high: 0.25 } }, 'spec.front', undefined);
    expect(aroundAim(back, at, 'camber', undefined)).toBe('−0.50 ± 0.75');
  });

  it('follows the aim digit by digit, and an end that is typed afterwards is that end', () => {
    let texts = {};
    for (const end of [3, 6, 8, 9, 10, 11]) texts = typed(texts, 'aim', '−0.5 ± 0.75'.slice(0, end));
    texts = typed(texts, 'high', '0.1');
    expect(windows(texts)).toEqual({ camber: { low: -1.25, aim: -0.5, high: 0.1 } });
    expect(aroundAim(texts, at, 'camber', undefined)).toBe('');
  });

  it('of toe in inches is a length at the maker’s diameter, and reads otherwise at the gauge’s', () => {
    useCardUnits({ '@toe': 'inch', '@toeParts': '32', '@length': 'inch', '@angle': 'degrees', '@decimal': '.' });
    const toe = 'spec.front.toe';
    const texts = typedWindow({}, toe, `${toe}.aim`, '1/16 ± 1/32', 'toe', 700);
    const angle = (inches: number, diameter: number) => (Math.asin((inches * 25.4) / diameter) * 180) / Math.PI;
    const window = { low: angle(1 / 32, 700), aim: angle(1 / 16, 700), high: angle(3 / 32, 700) };
    const told = axleWindowsOf(texts, 'spec.front', { now: 700, before: undefined }, undefined) as typeof SPEC.front;
    for (const end of ['low', 'aim', 'high'] as const) expect(told?.toe?.[end]).toBeCloseTo(window[end], 9);
    expect(axleWindowTexts(told, 'spec.front', 700)).toMatchObject({ [`${toe}.low`]: '1/32', [`${toe}.high`]: '3/32' });
    // The gauge touches further in: the same angle is less there.
    expect(axleWindowTexts(told, 'spec.front', 350)).toMatchObject({ [`${toe}.low`]: '1/64', [`${toe}.high`]: '3/64' });
    expect(axleWindowTexts(told, 'spec.front', undefined)[`${toe}.low`]).toContain('°');
    useCardUnits(undefined);
  });
});

it('a car whose toe is an angle needs no diameter, and keeps the maker’s where it has one', () => {
  const record = recordOf({ ...REST }, { ...SPEC, toeDiameter: 660 });
  const { rimDiameter: _, ...wheel } = record.car.wheel;
  const bare: CarRecord = { ...record, car: { ...record.car, wheel } };
  const { car, spec } = checked(fileOf(textsOf(bare), 'c', bare));
  expect(car.wheel).toEqual({});
  expect(spec?.toeDiameter).toBe(660);
  expect(checked(fileOf({ ...textsOf(bare), 'spec.toeDiameter': '' }, 'c', bare)).spec).not.toHaveProperty(
    'toeDiameter',
  );
  expect(() => checked(fileOf({ ...textsOf(bare), 'spec.toeDiameter': '50' }, 'c', bare))).toThrow(
    'spec.toeDiameter: 50',
  );
});

describe('an adjuster copied', () => {
  const texts = {
    'car.rear.adjusters[0].id': 'cam-1',
    'car.rear.adjusters[0].name': 'Cam',
    'car.rear.adjusters[0].positions[0].label': '1',
    'car.rear.adjusters[1].id': 'cam-2',
    'car.rear.adjusters[1].name': 'Cam 2',
  };
  it('stands last in the same list, under a name and an id of its own', () => {
    expect(copyOf(texts, 'car.rear.adjusters[0]', 'car.rear.adjusters')).toEqual({
      'car.rear.adjusters[2].id': 'cam-3',
      'car.rear.adjusters[2].name': 'Cam 3',
      'car.rear.adjusters[2].positions[0].label': '1',
    });
  });
  it('on the other side keeps them, as nobody there has them', () => {
    expect(copyOf(texts, 'car.rear.adjusters[1]', 'car.rear.rightAdjusters')).toEqual({
      'car.rear.rightAdjusters[0].id': 'cam-2',
      'car.rear.rightAdjusters[0].name': 'Cam 2',
    });
  });
});

describe('a cam laid round', () => {
  it('has its numbers evenly about the middle, the first where it was said to be', () => {
    for (const [first, at] of [
      [0, [0, 3, 0]],
      [90, [0, 0, 3]],
      [180, [0, -3, 0]],
      [270, [0, 0, -3]],
    ] as const) {
      const places = roundPlaces(8, 3, first);
      expect(places.map(({ label }) => label)).toEqual(['1', '2', '3', '4', '5', '6', '7', '8']);
      places[0]!.offset.forEach((x, i) => {
        expect(x).toBeCloseTo(at[i]!, 6);
      });
      for (const axis of [1, 2] as const)
        expect(places.reduce((sum, { offset }) => sum + offset[axis], 0)).toBeCloseTo(0, 5);
      for (const { offset } of places) expect(Math.hypot(...offset)).toBeCloseTo(3, 5);
    }
    // From outboard on towards the top.
    expect(roundPlaces(4, 2, 0)[1]?.offset).toEqual([0, 0, 2]);
  });
  it('is drawn in the plane that it moves in, and said', () => {
    expect(planeOf(roundPlaces(6, 2, 0))).toEqual([1, 2]);
    expect(planeOf([{ label: '1', offset: [2, 1, 0] }])).toEqual([1, 0]);
    expect(planeOf([{ label: '1', offset: [2, 0, 1] }])).toEqual([0, 2]);
    expect(saidOf(roundPlaces(4, 2.5, 0)[0]!)).toBe('number 1: 2.5 mm out');
    expect(saidOf({ label: '2', offset: [0, 0, 0] })).toBe('number 2: in the middle');
  });
});
