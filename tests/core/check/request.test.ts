/** What a plan is asked for, and the readings and times that a file brings. */
import { type GenericSchema, safeParse } from 'valibot';
import { describe, expect, it, test } from 'vitest';
import { planRequest } from '../../../core/ask/plan-request.ts';
import { validateCarSettings, validateSettings } from '../../../core/check/adjusters.ts';
import { validatePlanRequest, validateRequestOptions } from '../../../core/check/request.ts';
import * as schema from '../../../core/check/schema.ts';
import { validateReading, validateSpec } from '../../../core/check/spec.ts';
import { carFile } from '../records/fixture.ts';

const good = planRequest(carFile('tarn-gt.json'));
const { car } = good;
const refusedFor = (field: string) => expect.objectContaining({ name: 'InputError', field });

describe('what is locked', () => {
  const locked = (value: unknown) => validateRequestOptions({ locked: value }, car).locked;
  const tie = (corner: string) => ({ corner, adjuster: 'tie-rod' });

  it('may be a list, or by corner as readings are, one id or several', () => {
    expect(locked([tie('LF')])).toEqual([tie('LF')]);
    expect(locked({ LF: ['tie-rod', 'upper-front'], RF: 'tie-rod' })).toEqual([
      tie('LF'),
      { corner: 'LF', adjuster: 'upper-front' },
      tie('RF'),
    ]);
    expect(locked({})).toEqual([]);
  });

  test.each([
    [null, 'locked'],
    ['tie-rod', 'locked'],
    [{ FL: ['tie-rod'] }, 'locked[0].corner'],
    [{ LF: [7] }, 'locked[0].adjuster'],
    [[tie('LF'), { corner: 'RF', adjuster: 'gone' }], 'locked[1].adjuster'],
    [Array(257).fill(tie('LF')), 'locked'],
  ])('%# is refused', (value, field) => {
    expect(() => locked(value)).toThrow(refusedFor(field));
  });
});

describe('what is done and what is left', () => {
  it.each(['done', 'leave'] as const)('%s: adjusters of the car, as those that are locked', (name) => {
    const given = { LF: ['tie-rod'] };
    expect(validateRequestOptions({ [name]: given }, car)).toEqual({ [name]: [{ corner: 'LF', adjuster: 'tie-rod' }] });
    expect(validatePlanRequest({ ...good, [name]: given })[name]).toHaveLength(1);
    for (const [value, field] of [
      ['tie-rod', name],
      [{ FL: ['tie-rod'] }, `${name}[0].corner`],
      [[{ corner: 'RF', adjuster: 'gone' }], `${name}[0].adjuster`],
      [Array(257).fill({ corner: 'LF', adjuster: 'tie-rod' }), name],
    ] as const) {
      expect(() => validateRequestOptions({ [name]: value }, car)).toThrow(refusedFor(field));
    }
  });
});

describe('options', () => {
  it('that were not given are not there', () => {
    expect(validateRequestOptions({}, car)).toEqual({});
    const all = {
      ...{ locked: [], done: [], leave: [], style: 'surest', maxEffort: 0, gauge: { camber: 0, caster: 0, toe: 0 } },
      drawer: [{ size: 1.5, count: 0 }],
    };
    expect(validateRequestOptions(all, car)).toEqual(all);
  });

  test.each<[unknown, string]>([
    [undefined, 'options'],
    [[], 'options'],
    [{ maxEffort: -1 }, 'maxEffort'],
    [{ maxEffort: 100001 }, 'maxEffort'],
    [{ gauge: { camber: 0, caster: 0 } }, 'gauge.toe'],
    [{ gauge: { camber: 0, caster: 5.1, toe: 0 } }, 'gauge.caster'],
    [{ drawer: [{ size: 50.1, count: 1 }] }, 'drawer[0].size'],
    [{ drawer: [{ size: 1, count: 10001 }] }, 'drawer[0].count'],
    [{ drawer: Array.from({ length: 65 }, (_, i) => ({ size: (i + 1) / 4, count: 1 })) }, 'drawer'],
    // The same to a millionth of a millimetre is the same shim.
    [
      {
        drawer: [
          { size: 1, count: 1 },
          { size: 1 + 1e-8, count: 1 },
        ],
      },
      'drawer[1].size',
    ],
  ])('%# are refused', (options, field) => {
    expect(() => validateRequestOptions(options, car)).toThrow(refusedFor(field));
  });
});

describe('a request', () => {
  it.each(['car', 'spec', 'reading', 'settings'])('needs its %s', (part) => {
    expect(() => validatePlanRequest({ ...good, [part]: undefined })).toThrow(refusedFor(part));
  });

  it('names what was asked beside them as it is', () => {
    expect(() => validatePlanRequest({ ...good, style: 'fastest' })).toThrow(refusedFor('style'));
    expect(() => validatePlanRequest({ ...good, drawer: [{ size: 1 }] })).toThrow(refusedFor('drawer[0].count'));
    expect(() => validatePlanRequest([])).toThrow(refusedFor('request'));
  });
});

describe('positions', () => {
  it('are known by their adjuster, a label written as a number among them', () => {
    const adjusters = [
      { id: 'kit', kind: 'effect-table', reference: 'A', positions: [{ label: 'A' }, { label: '7', camber: 1 }] },
    ];
    expect(validateSettings({ kit: 7 }, adjusters)).toEqual({ kit: 7 });
    expect(() => validateSettings({ kit: 8 }, adjusters)).toThrow(refusedFor('settings.kit'));
    expect(() => validateSettings({ rod: 1 }, adjusters)).toThrow(refusedFor('settings.rod'));
    expect(() => validateSettings({ rod: 1 }, [])).toThrow(refusedFor('settings.rod'));
    expect(() => validateSettings({ toString: 1 }, adjusters)).toThrow(/^settings/);
  });

  it('of a car are by corner, those that were given', () => {
    expect(validateCarSettings({ RF: { 'tie-rod': 0 } }, car)).toEqual({ RF: { 'tie-rod': 0 } });
    expect(() => validateCarSettings({ RF: {}, FL: {} }, car)).toThrow(refusedFor('settings.FL'));
    expect(() => validateCarSettings({ LF: { 'tie-rod': 999 } }, car)).toThrow(refusedFor('settings.LF.tie-rod'));
  });
});

describe('a spec', () => {
  const window = { low: 0, high: 1 };
  test.each([
    ...['front', 'rear'].flatMap((axle) => [
      ...['camber', 'caster', 'toe', 'totalToe', 'crossCamber', 'crossCaster', 'thrustAngle'].map((angle) => [
        `${axle}.${angle}`,
      ]),
      ...['left', 'right'].flatMap((side) => ['camber', 'caster', 'toe'].map((angle) => [`${axle}.${side}.${angle}`])),
    ]),
  ])('has a window for %s, checked like any other', (path) => {
    const withWindow = (own: object) => path.split('.').reduceRight<object>((inner, key) => ({ [key]: inner }), own);
    expect(validateSpec(withWindow(window))).toEqual(withWindow(window));
    for (const aim of [0, 1])
      expect(validateSpec(withWindow({ ...window, aim }))).toEqual(withWindow({ ...window, aim }));
    expect(() => validateSpec(withWindow({ low: 1, high: 1 }))).toThrow(refusedFor(`spec.${path}.low`));
    expect(() => validateSpec(withWindow({ ...window, aim: 1.01 }))).toThrow(refusedFor(`spec.${path}.aim`));
    expect(() => validateSpec(withWindow({ ...window, aim: -0.01 }))).toThrow(refusedFor(`spec.${path}.aim`));
    expect(() => validateSpec(withWindow({ low: 0 }))).toThrow(refusedFor(`spec.${path}.high`));
  });
});

describe('a reading', () => {
  it('may come back with the corners that had no pose', () => {
    const reading = {
      ...{ LF: { camber: 90, caster: -90, toe: 0, sai: 12 }, toeReference: 'thrust-line', steeringWheel: -90 },
      unreachable: [{ corner: 'RR', message: 'too far' }],
    };
    expect(validateReading(reading)).toEqual(reading);
  });

  test.each<[unknown, string]>([
    [{ unreachable: [{ corner: 'FL', message: '' }] }, 'reading.unreachable[0].corner'],
    [{ unreachable: [{ corner: 'LF' }] }, 'reading.unreachable[0].message'],
    [{ toeReference: 'axle' }, 'reading.toeReference'],
    [{ steeringWheel: 90.1 }, 'reading.steeringWheel'],
    [{ steeringWheel: '5' }, 'reading.steeringWheel'],
    [{ rideHeights: { LF: 2000.1 } }, 'reading.rideHeights.LF'],
    [{ rideHeights: { RR: -500.1 } }, 'reading.rideHeights.RR'],
    [{ rideHeights: { LF: '385' } }, 'reading.rideHeights.LF'],
    [{ rideHeights: { front: 385 } }, 'reading.rideHeights.front'],
    [{ rideHeights: 385 }, 'reading.rideHeights'],
    [{ LF: { camber: -90.1 } }, 'reading.LF.camber'],
    [{ LF: { height: 1 } }, 'reading.LF.height'],
    [{ RR: { sai: '12' } }, 'reading.RR.sai'],
  ])('%j is refused', (reading, field) => {
    expect(() => validateReading(reading)).toThrow(refusedFor(field));
  });
});

describe('a time', () => {
  const takes = (value: unknown) => safeParse(schema.fields.time as GenericSchema, value).success;

  test.each([
    ...['2024-12-01', '2024-12-01T08:00', '2024-12-01T08:00Z', '2024-12-01T08:00:30', '2024-12-01T08:00:30.5Z'],
    ...['2024-12-01T08:00:30.123456789+01:00', '2024-12-01T08:00-11:30'],
  ])('may be %s', (time) => {
    expect(takes(time)).toBe(true);
  });

  test.each([
    ...['', '2024', '24-12-01', '2024-1-01', '2024-12-1', '2024-12-01T', '2024-12-01T8:00', '2024-12-01T08'],
    ...['2024-12-01T08:0', '2024-12-01T08:00:3', '2024-12-01T08:00:30.', '2024-12-01T08:00:30.1234567890'],
    ...['2024-12-01T08:00:30.xZ', '2024-12-01T08:00+1:00', '2024-12-01T08:00+01:0', '2024-12-01T08:00+aa:bb'],
    ...['2024-12-01T08:00 01:00', 'on 2024-12-01', '2024-12-01 or so', '2024-12-01T08:00Zulu', '2024-12-01Z'],
    ...['yyyy-12-01', '2024-mm-01', '2024-12-dd', '2024-12-01Thh:00', '2024-12-01T08:mm', '2024-12-01T08:00:ss'],
  ])('is not %j', (text) => {
    expect(takes(text)).toBe(false);
  });
});

describe('a position, an id', () => {
  const takes = (own: GenericSchema, value: unknown) => safeParse(own, value).success;
  it('is a number or a label', () => {
    expect([0, -1.5, 'M', 'x'.repeat(400)].filter((value) => !takes(schema.position, value))).toEqual([]);
    const bad = ['', 'x'.repeat(401), Number.NaN, Number.POSITIVE_INFINITY, null, true];
    expect(bad.filter((value) => takes(schema.position, value))).toEqual([]);
  });
  it('is no name of the language itself', () => {
    const bad = ['constructor', '__proto__', 'hasOwnProperty', '', 7];
    expect(bad.filter((value) => takes(schema.id, value))).toEqual([]);
    expect(takes(schema.id, 'LF rod 1')).toBe(true);
  });
});
