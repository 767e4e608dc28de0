/** Records as a backup brings them: a good one of every store, spoilt in one place at a time. */
import { describe, expect, it, test } from 'vitest';
import { canonical } from '../../../core/records/canonical.ts';
import { checkDepth, parseJson, validateCarFile } from '../../../core/records/car-file.ts';
import { migrate } from '../../../core/records/migrations.ts';
import { readStores } from '../../../core/records/stored-schema.ts';
import { carFile, carFileData } from './fixture.ts';

const at = '2024-12-01T08:00:00Z';
const { car } = carFile('tarn-gt.json');
const GOOD = {
  cars: [
    {
      ...{ id: car.id, car, spec: {}, changed: at, practice: false },
      ...{ versions: [{ car, spec: {}, changed: at }], past: { a0: at } },
    },
  ],
  visits: [
    {
      ...{ id: 'v', carId: car.id, opened: at, closed: at, checks: { tyres: 'ok' } },
      marks: { closed: [{ value: '' }, { value: at, at }] },
    },
  ],
  readings: [{ id: 'r', visitId: 'v', at, reading: { LF: { camber: 1 } }, settings: {}, typed: { 'LF.camber': '1' } }],
  moves: [
    {
      ...{ id: 'm', visitId: 'v', readingId: 'r', at, corner: 'LF', adjuster: 'tie-rod' },
      ...{ from: 0, to: 'A', outcome: 'done' },
    },
  ],
  drafts: [{ id: 'd', texts: { 'LF.camber': '-' }, cursor: 'LF.camber', changed: at }],
  preferences: [{ id: 'units', value: { angle: 'degrees' } }],
};

/** The good stores with one value set, or left out where it is `undefined`. */
function spoilt(path: string, value: unknown): unknown {
  const data = JSON.parse(JSON.stringify(GOOD));
  const keys = path.split('.');
  const last = keys.pop() as string;
  const place = keys.reduce((on, key) => on[key], data);
  place[last] = value;
  return JSON.parse(JSON.stringify(data));
}

describe('the stores of a backup', () => {
  it('are taken as they are, with what a later version may have added', () => {
    const more = { ...GOOD, visits: [{ ...GOOD.visits[0], colour: 'red' }] };
    expect(readStores(more)).toEqual({ stores: more, aside: [] });
    const empty = { cars: [], visits: [], readings: [], moves: [], drafts: [], preferences: [] };
    expect(readStores(empty)).toEqual({ stores: empty, aside: [] });
  });

  test.each<[string, unknown]>([
    ['cars.0.id', undefined],
    ['cars.0.id', 'toString'],
    ['cars.0.car', undefined],
    ['cars.0.car.id', 7],
    ['cars.0.car.label', 7],
    ['cars.0.car.wheel', []],
    ['cars.0.car.wheel.rimDiameter', '430'],
    ['cars.0.car.wheelbase', '2600'],
    ['cars.0.car.front', undefined],
    ['cars.0.car.rear.steered', 'no'],
    ['cars.0.car.front.suspension.kind', ''],
    ['cars.0.car.front.suspension.points', 7],
    ['cars.0.car.front.suspension.points.upperBall', 'there'],
    ['cars.0.car.front.suspension.points.upperBall.0', null],
    ['cars.0.car.front.adjusters', {}],
    ['cars.0.car.front.adjusters.0.id', ''],
    ['cars.0.car.front.rightAdjusters', {}],
    ['cars.0.car.front.adjusters.0.kind', undefined],
    ['cars.0.spec', []],
    ['cars.0.changed', 'today'],
    ['cars.0.practice', 'yes'],
    ['visits.0.id', undefined],
    ['visits.0.carId', ''],
    ['visits.0.opened', undefined],
    ['visits.0.closed', 'later'],
    ['visits.0.checks', []],
    ['visits.0.checks.tyres', 'x'.repeat(1_000_001)],
    ['visits.0.marks', []],
    ['visits.0.marks.closed', 'later'],
    ['visits.0.marks', { closed: [{ value: 'later' }] }],
    ['visits.0.marks', { closed: [{ value: at }, { value: 'toString' }] }],
    ['visits.0.marks.closed.0.value', 7],
    ['visits.0.marks.closed.0.at', 'later'],
    ['cars.0.versions', {}],
    ['cars.0.versions.0.car', undefined],
    ['cars.0.versions.0.spec', []],
    ['cars.0.past.a0', 'before'],
    ['drafts.0.versions', 7],
    ['preferences.0.changed', 'before'],
    ['readings.0.id', undefined],
    ['readings.0.visitId', undefined],
    ['readings.0.at', '2024'],
    ['readings.0.reading', undefined],
    ['readings.0.reading.LF.camber', 91],
    ['readings.0.settings', undefined],
    ['readings.0.typed', undefined],
    ['readings.0.typed.LF', 1],
    ['readings.0.replaces', ''],
    ['moves.0.id', undefined],
    ['moves.0.visitId', undefined],
    ['moves.0.readingId', undefined],
    ['moves.0.at', undefined],
    ['moves.0.corner', 'FL'],
    ['moves.0.adjuster', ''],
    ['moves.0.from', null],
    ['moves.0.to', ''],
    ['moves.0.outcome', 'maybe'],
    ['moves.0.replaces', ''],
    ['drafts.0.id', undefined],
    ['drafts.0.texts', undefined],
    ['drafts.0.cursor', 7],
    ['drafts.0.changed', undefined],
    ['preferences.0.id', ''],
    ['preferences.0.id', undefined],
    ['cars.0.car.plate', 7],
    ['cars.0.car.plate', 'x'.repeat(41)],
    ['cars.0.car.notes', {}],
    ['cars.0.car.steeringRatio', '16'],
    ['cars.0.car.front.suspension.kind', 'hasOwnProperty'],
    ['cars.0.car.rear.suspension.camber', '1'],
    ['cars.0.car.rear.rightSuspension', null],
    ['cars.0.car.front.adjusters.0.kind', 'constructor'],
    ['cars.0.car.front.adjusters.0.name', 7],
    ['cars.0.car.front.adjusters.0.effort', '5'],
    // What changed files brought to screens that could not draw it: see tests/bench/mutated.
    ['cars.0.car.wheel.rimDiameter', -420],
    ['cars.0.car.wheel.rimDiameter', 0.05],
    ['cars.0.car.wheel.rimDiameter', 1.2345e29],
    ['cars.0.car.wheelbase', 10],
    ['cars.0.car.steeringRatio', 0],
    ['cars.0.car.rear.suspension.points', undefined],
    ['cars.0.car.rear.suspension.points.inner3.2', null],
    ['cars.0.car.rear.suspension.points.wheelCentre.2', 1e308],
    ['cars.0.car.rear.suspension.camber', 90],
    ['cars.0.car.rear.suspension.tape', 7],
    ['cars.0.car.front.adjusters.1.sizes.1', [1]],
    ['cars.0.car.front.adjusters.1.max', 'x'],
    ['cars.0.car.front.adjusters.2.range', null],
    ['cars.0.changed', '2026-02-30T25:61:00Z'],
    ['visits.0.opened', '2026-13-45'],
    ['cars.0.spec.front', 'wide'],
    ['cars.0.spec.middle', {}],
    ['cars.0.spec', { front: { camber: { low: 1, high: 0 } } }],
    ['preferences.0.value', null],
    ['preferences.0.value.angle', 'radians'],
    ['preferences.0.value.sai', 'yes'],
  ])('set the record aside with %s = %j, by its place, and the rest comes in', (path, value) => {
    const field = `stores.${path.replace(/\.(\d+)/g, '[$1]')}`;
    const { stores, aside } = readStores(spoilt(path, value));
    const [store] = path.split('.') as [keyof typeof GOOD];
    expect(aside).toEqual([
      expect.objectContaining({
        store,
        error: expect.objectContaining({ name: 'InputError', field, allowed: expect.stringMatching(/\w/) }),
      }),
    ]);
    expect(stores).toEqual({ ...GOOD, [store]: [] });
  });

  it('name what is set aside where it has a name', () => {
    const { aside } = readStores(spoilt('drafts.0.texts', undefined));
    expect(aside.map(({ store, id }) => [store, id])).toEqual([['drafts', 'd']]);
  });

  test.each([undefined, {}, 7])('are refused where one is %j and no list', (value) => {
    expect(() => readStores(spoilt('cars', value))).toThrow(
      expect.objectContaining({ name: 'InputError', field: 'stores.cars', allowed: expect.stringMatching(/\w/) }),
    );
  });
});

describe('the settings of a backup', () => {
  const aside = (id: string, value: unknown) =>
    readStores({ ...GOOD, preferences: [{ id, value, versions: [{ value }] }] }).aside.map(({ error }) => error.field);
  const shim = { size: 1, count: 4 };

  test.each<[string, unknown, string, unknown]>([
    [
      'units',
      { angle: 'degrees-minutes', toe: 'mm', length: 'inch', thrust: 'right-minus', decimal: ',', sai: true },
      '',
      7,
    ],
    ['units', {}, '.toe', { toe: 'feet' }],
    ['units', {}, '.length', { length: 'cm' }],
    ['units', {}, '.thrust', { thrust: 'left-plus' }],
    ['units', {}, '.decimal', { decimal: ';' }],
    ['gauge', { camber: 0.1, caster: 0.1, toe: 0.1 }, '.camber', { camber: -1, caster: 0.1, toe: 0.1 }],
    ['drawer', { counted: true, shims: [shim] }, '.counted', { counted: 1 }],
    ['drawer', {}, '.shims[0].count', { shims: [{ ...shim, count: -1 }] }],
    ['theme', 'dark', '', 'pink'],
    ['toe-reference', 'thrust-line', '', 'body'],
    ['total-toe', true, '', 'yes'],
    ['total-toe:some-car', false, '', 'yes'],
    ['backup', { at }, '.at', { at: 'today' }],
  ])('%s may be %j, and is set aside by %s with %j', (id, good, field, wrong) => {
    expect(aside(id, good)).toEqual([]);
    expect(aside(id, wrong)).toEqual([`stores.preferences[0].value${field}`]);
    const kept = readStores({ ...GOOD, preferences: [{ id, value: good, versions: [{ value: wrong }] }] }).aside;
    expect(kept.map(({ error }) => error.field)).toEqual([`stores.preferences[0].versions[0].value${field}`]);
  });

  it('of a later version may be anything', () => {
    expect(aside('unheard-of', { any: ['thing'] })).toEqual([]);
  });

  it('and the cars are of finite numbers, in words', () => {
    const { aside: none } = readStores({ ...GOOD, cars: [{ ...GOOD.cars[0], car: { ...car, wheelbase: Infinity } }] });
    expect(none.map(({ error }) => [error.field, error.rule.is])).toEqual([['stores.cars[0].car.wheelbase', 'number']]);
  });
});

describe('what is read from outside', () => {
  test.each([undefined, null, 7, 'text', []])('%j is no file', (value) => {
    expect(() => migrate('car-file', value)).toThrow(expect.objectContaining({ name: 'InputError', field: 'file' }));
    expect(() => parseJson(value === 'text' ? '{' : (value as string), 'backup')).toThrow(
      expect.objectContaining({ name: 'InputError', field: 'backup' }),
    );
  });

  it('may be nested as deep as our deepest file, and no deeper', () => {
    const nest = (levels: number): unknown => (levels === 0 ? 'x' : { a: nest(levels - 1), b: [] });
    expect(() => checkDepth(nest(24), 'file', 24)).not.toThrow();
    expect(() => checkDepth(nest(25), 'file', 24)).toThrow('file: "deeply nested data" is not allowed');
  });

  it('has a spec and visits only where the file had them', () => {
    const { format, version, car: given } = carFileData('tarn-gt.json') as Record<string, unknown>;
    expect(Object.keys(validateCarFile({ format, version, car: given }))).toEqual(['format', 'version', 'car']);
  });

  test.each([
    [0, false],
    [2, true],
    ['2', false],
    [null, false],
    [1.5, true],
  ])('of version %j is refused, and said to be newer only where it is a number that is', (version, newer) => {
    expect(() => migrate('car-file', { version })).toThrow(
      expect.objectContaining({ field: 'version', rule: { is: 'version', newest: 1, newer } }),
    );
  });

  it('holds so many values at the most as its length could with something in them, blanks apart', () => {
    // 200,000 and one for every six characters: n noughts and their commas are 2n.
    const noughts = (count: number, blank = '') => `[${`0,${blank}`.repeat(count - 1)}0]`;
    for (const blank of ['', ' ', '\n\n']) {
      expect(parseJson(noughts(299_990, blank), 'file')).toHaveLength(299_990);
      expect(() => parseJson(noughts(300_010, blank), 'file')).toThrow('file: "too many values"');
    }
  });

  it('has no more names in one object than 200,000, and more items in a list', () => {
    const names = (count: number) => `{${'"same":1,'.repeat(count - 1)}"last":1}`;
    expect(parseJson(names(200_000), 'file')).toEqual({ same: 1, last: 1 });
    expect(() => parseJson(names(200_001), 'file')).toThrow('file: "too many values"');
    expect(parseJson(`[${'"s",'.repeat(200_000)}""]`, 'file')).toHaveLength(200_001);
  });

  it('is counted to its end, whatever its strings hold', () => {
    const bounds = { values: 3 };
    for (const one of ['"a"', '"\\""', '"\\\\"', '"[,{"', '""']) {
      expect(parseJson(`[${one},1]`, 'file', undefined, bounds)).toHaveLength(2);
      expect(() => parseJson(`[${one},1,2,3]`, 'file', undefined, bounds)).toThrow('file: "too many values"');
    }
    // One that does not end is no JSON, and nothing in it counts.
    expect(() => parseJson('["a,,,,', 'file', undefined, bounds)).toThrow(
      expect.objectContaining({ rule: expect.objectContaining({ is: 'json' }) }),
    );
    expect(() => parseJson('[[[[0]]]]', 'file', undefined, { deepest: 2 })).toThrow('file: "deeply nested data"');
    expect(parseJson('[[[0]]]', 'file', undefined, { deepest: 2 })).toEqual([[[0]]]);
  });

  it('shows the beginning of a text that is not JSON, not all of it', () => {
    try {
      parseJson('x'.repeat(5000), 'file');
      expect.unreachable();
    } catch (error) {
      expect((error as { value: string }).value).toBe('x'.repeat(40));
    }
  });
});

it('canonical text has its keys in order, at every depth, and null for what a list lacks', () => {
  const value = { b: 1, a: { d: [undefined, { z: 1, y: undefined, x: 'ä' }], c: null } };
  expect(canonical(value)).toBe('{"a":{"c":null,"d":[null,{"x":"ä","z":1}]},"b":1}');
});
