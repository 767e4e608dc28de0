/**
 * How the steering wheel stands, by a thought experiment with the solved rack. The tie rods lie behind the axle, so the rack
 * pushed to the car's left pushes the rear of the left wheel out and pulls that of the right wheel in: both turn to the
 * right, which is the steering wheel turned to the right. A car rolls to where its rear wheels point; the rack goes to
 * where the front wheels, on the whole, point there too, and the steering wheel with it.
 */
import { describe, expect, it } from 'vitest';
import {
  adjustersOf,
  type Car,
  type CarFile,
  type Plan,
  type PlanStyle,
  planMoves,
  planOfFile,
  planRequest,
  type Reading,
  type Settings,
  type Spec,
  solveCorner,
} from '../../../core/index.ts';
import practice from '../../../fixtures/cars/practice.json' with { type: 'json' };

const whole = practice.car as unknown as Car;
/** With rods in front and nothing else: what a style nears its aims with beside them is none of this. */
const rods = whole.front.adjusters.filter(({ id }) => id === 'tie-rod');
const made: Car = { ...whole, front: { ...whole.front, adjusters: rods }, rear: { ...whole.rear, adjusters: [] } };
/** Degrees of steering wheel for a mm of rack: a turn is 50 mm. */
const PER_MM = 360 / 50;

const toeAt = (side: 'LF' | 'RF', settings: Settings, rack: number): number => {
  const pose = solveCorner(made.front.suspension, adjustersOf(made, side), settings, {
    rack: side === 'LF' ? rack : -rack,
  });
  if (!pose.reachable) throw new Error(pose.message);
  return pose.toe;
};
/** Where the front wheels point, degrees to the right, with the rack so many mm to the left. */
const ahead = (rods: readonly [number, number], rack: number): number =>
  (toeAt('LF', { 'tie-rod': rods[0] }, rack) - toeAt('RF', { 'tie-rod': rods[1] }, rack)) / 2;
const total = (rods: readonly [number, number], rack: number): number =>
  toeAt('LF', { 'tie-rod': rods[0] }, rack) + toeAt('RF', { 'tie-rod': rods[1] }, rack);

/** mm of rack with which the front wheels point so many degrees to the right. */
function rackFor(rods: readonly [number, number], right: number): number {
  let [low, high] = [-12, 12];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (ahead(rods, middle) < right) low = middle;
    else high = middle;
  }
  return low;
}
const RATIO = (2 * PER_MM) / (ahead([0, 0], 1) - ahead([0, 0], -1));
const car: Car = { ...made, steeringRatio: RATIO };
const STYLES = ['practical', 'closest', 'least-work', 'surest'] as const satisfies readonly PlanStyle[];

const fileOf = (reading: Reading, settings: Settings[], spec: Spec, of = car): CarFile => ({
  ...{ format: 'cornerwright', version: 1, car: of, spec },
  visits: [
    {
      ...{ id: 'v', carId: car.id, opened: '2026-01-01' },
      rounds: [{ reading, settings: { LF: settings[0]!, RF: settings[1]! } }],
    },
  ],
});
const rodAt = ({ positions }: Plan, side: 'LF' | 'RF'): number => positions[side]['tie-rod'] as number;

it('the rack of this car is geared as a road car mostly is', () => {
  expect(RATIO).toBeGreaterThan(12);
  expect(RATIO).toBeLessThan(20);
});

describe('a steering wheel that stood off as the car rolled in straight', () => {
  /** Rods of the car as it comes, turns: the left one as much too long as the right one is too short, or so. */
  const FOUND: readonly (readonly [number, number])[] = [
    [-0.75, 0.75],
    [0.5, -0.5],
    [1, -1.25],
  ];

  describe.each(FOUND)('with rods at %d and %d turns', (left, right) => {
    const stood = [left, right] as const;
    const rack = rackFor(stood, 0);
    const steeringWheel = rack * PER_MM;
    const toe = total(stood, rack) / 2;
    // A gauge gives the total; each wheel has half.
    const reading: Reading = { LF: { toe }, RF: { toe }, steeringWheel };
    const spec: Spec = { front: { totalToe: { low: 2 * toe - 0.12, high: 2 * toe + 0.12 } } };
    const settings = [{ 'tie-rod': left }, { 'tie-rod': right }];

    it('stands to the right where the rods have the wheels point to the left', () => {
      expect(Math.abs(steeringWheel)).toBeGreaterThan(3);
      expect(Math.sign(steeringWheel)).toBe(-Math.sign(ahead(stood, 0)));
    });

    it.each(STYLES)('is level after the %s plan, by rods turned alike and opposite', (style) => {
      const plan = planOfFile(fileOf(reading, settings, spec), { style });
      const then = [rodAt(plan, 'LF'), rodAt(plan, 'RF')] as const;
      const [byLeft, byRight] = [then[0] - left, then[1] - right];
      expect(byLeft * byRight).toBeLessThan(0);
      // Within three steps of the rods, of which one is a twelfth of a turn.
      expect(Math.abs(byLeft + byRight)).toBeLessThanOrEqual(3 / 12 + 1e-9);
      expect(Math.abs(rackFor(then, 0) * PER_MM)).toBeLessThan(1.1);
      expect(Math.abs(total(then, rackFor(then, 0)) - 2 * toe)).toBeLessThan(0.12);
      expect(plan.inWindow).toBe(true);
    });

    it('is the same plan as of a car that was read with it clamped level', () => {
      const clamped: Reading = { LF: { toe: toeAt('LF', settings[0]!, 0) }, RF: { toe: toeAt('RF', settings[1]!, 0) } };
      const half = { low: toe - 0.06, high: toe + 0.06 };
      const plan = planOfFile(fileOf(clamped, settings, { front: { toe: half } }), { style: 'closest' });
      const other = planOfFile(fileOf(reading, settings, { front: { toe: half } }), { style: 'closest' });
      for (const side of ['LF', 'RF'] as const)
        expect(Math.abs(rodAt(plan, side) - rodAt(other, side))).toBeLessThan(0.1);
    });

    it('is level after the practical plan of a car with more to move, which lets that be', () => {
      const { moves } = planOfFile(fileOf(reading, settings, spec, { ...whole, steeringRatio: RATIO }), {
        style: 'practical',
      });
      expect(moves.map(({ corner, adjuster }) => `${corner} ${adjuster}`)).toEqual(['LF tie-rod', 'RF tie-rod']);
    });

    it('is told, with what it is at the road wheels', () => {
      const { noted, notes } = planOfFile(fileOf(reading, settings, spec));
      const [note] = noted.filter(({ note }) => note === 'wheel-stood-off');
      expect(note).toEqual({ note: 'wheel-stood-off', degrees: steeringWheel, road: steeringWheel / RATIO });
      expect(notes.join()).toContain(
        `${Number(Math.abs(steeringWheel).toFixed(1))}° off level, to the ${steeringWheel > 0 ? 'right' : 'left'}`,
      );
    });

    it('counts as little as before where the steering ratio is not known, and that is said', () => {
      const plan = planOfFile(fileOf(reading, settings, spec, made));
      expect(plan.moves).toEqual([]);
      expect(plan.noted).toContainEqual({ note: 'wheel-stood-off', degrees: steeringWheel });
    });
  });

  it('is told to stay off as far as held rods leave it', () => {
    const reading: Reading = { LF: { toe: 0.05 }, RF: { toe: 0.05 }, steeringWheel: 8 };
    const spec: Spec = { front: { totalToe: { low: 0, high: 0.2 } } };
    const locked = (['LF', 'RF'] as const).map((corner) => ({ corner, adjuster: 'tie-rod' }));
    const { noted, inWindow, shortfall } = planOfFile(fileOf(reading, [{}, {}], spec), { locked });
    expect(noted).toContainEqual(expect.objectContaining({ note: 'wheel-stood-off', stays: expect.closeTo(8, 9) }));
    // Nobody gave it a window.
    expect({ inWindow, shortfall }).toEqual({ inWindow: true, shortfall: [] });
  });

  it.each(STYLES.filter((style) => style !== 'closest'))(
    'where one rod is held and the other would bring it level only with the total out, the %s plan lets it be',
    (style) => {
      const reading: Reading = { LF: { toe: 0.05 }, RF: { toe: 0.05 }, steeringWheel: 8 };
      const spec: Spec = { front: { totalToe: { low: 0, high: 0.2 } } };
      const locked = [{ corner: 'LF', adjuster: 'tie-rod' }] as const;
      const plan = planOfFile(fileOf(reading, [{}, {}], spec), { locked, style });
      expect(plan.inWindow).toBe(true);
      if (style !== 'surest') expect(plan.moves).toEqual([]);
      const totalToe = (plan.predicted.LF?.toe ?? NaN) + (plan.predicted.RF?.toe ?? NaN);
      expect(totalToe).toBeGreaterThan(0);
      expect(totalToe).toBeLessThan(0.2);
    },
  );

  it('is level or not: a rod that is held on one side is free on the other', () => {
    const reading: Reading = { LF: { toe: 0.3 }, RF: { toe: 0.3 } };
    const spec: Spec = { front: { totalToe: { low: 0, high: 0.2 } } };
    for (const held of ['LF', 'RF'] as const) {
      const { moves, inWindow } = planOfFile(fileOf(reading, [{}, {}], spec), {
        locked: [{ corner: held, adjuster: 'tie-rod' }],
      });
      expect(moves.map(({ corner }) => corner)).toEqual([held === 'LF' ? 'RF' : 'LF']);
      expect(inWindow).toBe(true);
    }
  });

  it('gives way to steer-ahead that has a window of its own', () => {
    const reading: Reading = { LF: { toe: 0.05 }, RF: { toe: 0.05 }, steeringWheel: 8 };
    const own = { low: 0.25, high: 0.35 };
    const plan = planMoves(planRequest(fileOf(reading, [{}, {}], { front: { thrustAngle: own } })));
    const { LF, RF } = plan.predicted;
    expect((LF!.toe! - RF!.toe!) / 2).toBeGreaterThan(0.25);
    expect(plan.noted.filter(({ note }) => note === 'wheel-stood-off')).toHaveLength(1);
  });

  it('costs the windows no chance: it is wished, and none', () => {
    const toe = total([-0.75, 0.75], rackFor([-0.75, 0.75], 0)) / 2;
    const reading: Reading = { LF: { toe }, RF: { toe }, steeringWheel: rackFor([-0.75, 0.75], 0) * PER_MM };
    const spec: Spec = { front: { totalToe: { low: 2 * toe - 0.3, high: 2 * toe + 0.3 } } };
    const { chance, odds } = planOfFile(fileOf(reading, [{ 'tie-rod': -0.75 }, { 'tie-rod': 0.75 }], spec));
    expect(odds.map(({ angle }) => angle)).toEqual(['totalToe']);
    expect(chance).toBeGreaterThan(0.99);
  });
});

describe('thrust that is left', () => {
  const rear = (thrust: number) => ({ LR: { toe: 0.1 + thrust }, RR: { toe: 0.1 - thrust } });
  const still = (reading: Reading, of = car) => {
    const locked = (['LF', 'RF'] as const).map((corner) => ({ corner, adjuster: 'tie-rod' }));
    const { noted, notes } = planOfFile(fileOf(reading, [{}, {}], { front: { toe: { low: -1, high: 1 } } }, of), {
      locked,
    });
    return { notes, left: noted.filter(({ note }) => note === 'thrust-left') };
  };

  it.each([0.3, -0.25, 0.1])('of %d° has the steering wheel stand off by as much as the rack has to go', (thrust) => {
    const front = { LF: { toe: 0.1 }, RF: { toe: 0.1 } };
    const { left, notes } = still({ ...front, ...rear(thrust) });
    const wheel = rackFor([0, 0], thrust) * PER_MM;
    expect(left).toEqual([
      {
        note: 'thrust-left',
        thrust: expect.closeTo(thrust, 9),
        goes: wheel > 0 ? 'right' : 'left',
        degrees: expect.any(Number),
      },
    ]);
    const [note] = left;
    if (note?.note !== 'thrust-left') throw new Error('no such note');
    expect(note.degrees).toBeCloseTo(Math.abs(thrust) * RATIO, 9);
    expect(Math.abs((note.degrees ?? 0) - Math.abs(wheel))).toBeLessThan(0.05 * Math.abs(wheel));
    expect(notes.join()).toContain(`about ${Math.round(Math.abs(wheel))}° to the ${wheel > 0 ? 'right' : 'left'}`);
  });

  it('is told without a figure where no steering ratio is on file', () => {
    const { left, notes } = still({ LF: { toe: 0.1 }, RF: { toe: 0.1 }, ...rear(-0.3) }, made);
    expect(left).toEqual([{ note: 'thrust-left', thrust: expect.closeTo(-0.3, 9), goes: 'left' }]);
    expect(notes.join()).toContain('steering ratio');
  });

  it('counts where the front wheels point too', () => {
    // Both already point where the rear wheels do.
    expect(still({ LF: { toe: 0.4 }, RF: { toe: -0.2 }, ...rear(0.3) }).left).toEqual([]);
  });

  it.each<[string, Reading]>([
    ['against the thrust line', { LF: { toe: 0.1 }, RF: { toe: 0.1 }, ...rear(0.3), toeReference: 'thrust-line' }],
    ['where it is small', { LF: { toe: 0.1 }, RF: { toe: 0.1 }, ...rear(0.02) }],
    ['where one rear wheel was not read', { LF: { toe: 0.1 }, RF: { toe: 0.1 }, LR: { toe: 0.4 } }],
    ['where one front wheel was not read', { LF: { toe: 0.1 }, ...rear(0.3) }],
  ])('is not spoken of %s', (_name, reading) => {
    expect(still(reading).left).toEqual([]);
  });
});
