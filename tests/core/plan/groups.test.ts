/** What is planned together, and which windows a reading can judge. */
import { describe, expect, it } from 'vitest';
import type { Car, Corner, Reading, Spec, WheelReading } from '../../../core/contract.ts';
import { groups, termsOf, termValue } from '../../../core/plan/terms.ts';
import { compileCar } from '../../../core/pose/car-model.ts';
import { LAYOUTS } from '../../tools/random-cars.ts';

const ALL: readonly Corner[] = ['LF', 'RF', 'LR', 'RR'];
const bare = { suspension: { kind: 'unknown', points: {}, camber: 0, toe: 0 }, adjusters: [], steered: false };
const car: Car = { id: 'a', label: 'a', wheel: { rimDiameter: 420 }, front: bare, rear: bare };
const beam = { kind: 'beam-linked', points: LAYOUTS['beam-linked'] ?? {}, camber: 0, toe: 0 };
const any = { low: -1, high: 1 };
const READ: Record<Corner, WheelReading> = {
  LF: { camber: 0.1, caster: 3, toe: 0.3 },
  RF: { camber: -0.2, caster: 2.5, toe: -0.1 },
  LR: { camber: -1, toe: 0.25 },
  RR: { camber: -1.2, toe: -0.15 },
};

describe('wheels are planned together where a window ties them', () => {
  const grouped = (spec: Spec, reading: Reading = READ, rear = bare) => {
    const model = compileCar({ ...car, rear });
    return groups(termsOf(spec, reading, { ...car, rear }).terms, model).map((group) =>
      group.flatMap(({ corners }) => corners).join(' '),
    );
  };
  it.each<[string, Spec, Reading, string[]]>([
    ['their own angles do not', { front: { camber: any, toe: any } }, READ, ['LF', 'RF']],
    ['a total does', { front: { totalToe: any } }, READ, ['LF RF']],
    ['each axle by itself', { front: { crossCaster: any }, rear: { thrustAngle: any } }, READ, ['LF RF', 'LR RR']],
    ['one wheel alone', { front: { left: { camber: any } } }, READ, ['LF']],
    ['none that was not read', { front: { toe: any } }, { LF: { toe: 0 } }, ['LF']],
    [
      'front toe against the thrust line, the rear',
      { front: { left: { toe: any } } },
      { ...READ, toeReference: 'thrust-line' },
      ['LF LR RR'],
    ],
    [
      'both front wheels by the rear ones',
      { front: { toe: any } },
      { ...READ, toeReference: 'thrust-line' },
      ['LF RF LR RR'],
    ],
    [
      'a sum of both does not care where the rear points',
      { front: { totalToe: any } },
      { ...READ, toeReference: 'thrust-line' },
      ['LF RF'],
    ],
    ['nor does camber', { front: { camber: any } }, { ...READ, toeReference: 'thrust-line' }, ['LF', 'RF']],
  ])('%s', (_, spec, reading, wanted) => {
    expect(grouped(spec, reading)).toEqual(wanted);
  });

  it('the wheels of a rigid axle are always', () => {
    expect(grouped({ rear: { toe: any } }, READ, { ...bare, suspension: beam })).toEqual(['LR RR']);
  });
});

describe('windows as sums of angles', () => {
  const spec: Spec = {
    front: { camber: any, toe: any, totalToe: any, crossCamber: any, crossCaster: any, thrustAngle: any },
    rear: { toe: any, totalToe: any, thrustAngle: any, left: { camber: any } },
  };
  const angles = (of: Record<Corner, WheelReading>) =>
    ALL.map((corner) => Float64Array.of(of[corner].camber ?? 0, of[corner].caster ?? 0, of[corner].toe ?? 0));
  /** By the contract: left − right, left + right, half of left − right. */
  function byHand(of: Record<Corner, WheelReading>): Record<string, number> {
    const { LF, RF, LR, RR } = of;
    const x = (value: number | undefined) => value ?? Number.NaN;
    return {
      'LF camber': x(LF.camber),
      'RF camber': x(RF.camber),
      'LF toe': x(LF.toe),
      'RF toe': x(RF.toe),
      'LR camber': x(LR.camber),
      'LR toe': x(LR.toe),
      'RR toe': x(RR.toe),
      'front totalToe': x(LF.toe) + x(RF.toe),
      'front crossCamber': x(LF.camber) - x(RF.camber),
      'front crossCaster': x(LF.caster) - x(RF.caster),
      'front thrustAngle': (x(LF.toe) - x(RF.toe)) / 2,
      'rear totalToe': x(LR.toe) + x(RR.toe),
      'rear thrustAngle': (x(LR.toe) - x(RR.toe)) / 2,
    };
  }
  const told = (reading: Reading, of: Record<Corner, WheelReading>) =>
    Object.fromEntries(
      termsOf(spec, reading, car).terms.map((term) => [
        `${term.where} ${term.angle}`,
        termValue(term, ALL, angles(of)),
      ]),
    );
  const close = (values: Readonly<Record<string, number>>) =>
    Object.fromEntries(Object.entries(values).map(([name, value]) => [name, expect.closeTo(value, 12)]));

  it('are those of the contract', () => {
    expect(told(READ, READ)).toEqual(close(byHand(READ)));
    expect(termsOf(spec, READ, car).unmeasured).toEqual([]);
  });

  it('against the thrust line are as they were read, and follow the rear wheels', () => {
    const reading: Reading = { ...READ, toeReference: 'thrust-line' };
    expect(told(reading, READ)).toEqual(close(byHand(READ)));
    // The rear wheels turned to the right by 0.2° and 0.1°: the thrust line by what both have in common.
    const turned = { ...READ, LR: { ...READ.LR, toe: 0.45 }, RR: { ...READ.RR, toe: -0.25 } };
    const gained = (0.45 + 0.25 - (0.25 + 0.15)) / 2;
    const shown = {
      ...turned,
      LF: { ...READ.LF, toe: 0.3 - gained },
      RF: { ...READ.RF, toe: -0.1 + gained },
    };
    expect(told(reading, turned)).toEqual(close(byHand(shown)));
  });

  it('are not where an angle was not read', () => {
    const { terms, unmeasured } = termsOf(spec, { LF: READ.LF, RF: { toe: 0 } }, car);
    expect(terms.map(({ where, angle }) => `${where} ${angle}`)).toEqual([
      'LF camber',
      'LF toe',
      'RF toe',
      'front totalToe',
      'front thrustAngle',
    ]);
    expect(unmeasured).toHaveLength(13 - terms.length);
  });
});
