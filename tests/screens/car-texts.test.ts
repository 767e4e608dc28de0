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
const { rightList } = await import('../../app/screens/build/new-adjuster.ts');
const { withSides } = await import('../../app/screens/build/window-texts.ts');

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
