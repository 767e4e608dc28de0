import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../core/contract.ts';
import { pointsFromTape, TAPE_DIMENSIONS, type Tape } from '../../../core/suspension/double-wishbone.tape.ts';

const deg = (r: number) => (r * 180) / Math.PI;
type Points = Readonly<Record<string, Vec3>>;

/** Every dimension, measured off the points: an account of its own of what each one means. */
function measure(p: Points): Record<string, number> {
  const at = (name: string): Vec3 => p[name] as Vec3;
  const apart = (a: string, b: string) => Math.hypot(...[0, 1, 2].map((i) => at(a)[i]! - at(b)[i]!));
  const high = (name: string) => at(name)[2];
  const plan = (from: string, to: string) => [at(to)[0] - at(from)[0], at(to)[1] - at(from)[1]] as const;
  const axis = [0, 1, 2].map((i) => at('upperBall')[i]! - at('lowerBall')[i]!) as [number, number, number];
  const skew = (which: string) => {
    const [x, y] = plan(`${which}Rear`, `${which}Front`);
    return deg(Math.atan2(y, x));
  };
  const [armX, armY] = plan('lowerBall', 'tieOuter');
  const [rodX, rodY] = plan('tieOuter', 'tieInner');
  return {
    caster: deg(Math.atan2(-axis[0], axis[2])),
    sai: deg(Math.atan2(-axis[1], axis[2])),
    upperFrontLength: apart('upperFront', 'upperBall'),
    upperRearLength: apart('upperRear', 'upperBall'),
    upperPivotSpacing: apart('upperFront', 'upperRear'),
    lowerFrontLength: apart('lowerFront', 'lowerBall'),
    lowerRearLength: apart('lowerRear', 'lowerBall'),
    lowerPivotSpacing: apart('lowerFront', 'lowerRear'),
    ballSpacing: apart('upperBall', 'lowerBall'),
    wheelCentreHeight: high('wheelCentre'),
    lowerBallHeight: high('lowerBall'),
    upperFrontHeight: high('upperFront'),
    upperRearHeight: high('upperRear'),
    lowerFrontHeight: high('lowerFront'),
    lowerRearHeight: high('lowerRear'),
    track: 2 * at('wheelCentre')[1],
    axleBehindFront: -at('wheelCentre')[0],
    lowerBallInset: at('wheelCentre')[1] - at('lowerBall')[1],
    lowerBallAhead: at('lowerBall')[0] - at('wheelCentre')[0],
    steeringArmLength: apart('lowerBall', 'tieOuter'),
    tieOuterHeight: high('tieOuter'),
    tieRodLength: apart('tieOuter', 'tieInner'),
    tieInnerHeight: high('tieInner'),
    upperPivotSkew: skew('upper'),
    lowerPivotSkew: skew('lower'),
    steeringArmAngle: deg(Math.atan2(-armY, Math.abs(armX))),
    tieRodSweep: deg(Math.atan2(rodX, -rodY)),
  };
}

/** Whether an arm's ball lies outboard of the line through its pivots, in plan. */
function ballOutboard(p: Points, which: string): boolean {
  const [front, rear, ball] = [p[`${which}Front`]!, p[`${which}Rear`]!, p[`${which}Ball`]!];
  return (front[0] - rear[0]) * (ball[1] - rear[1]) - (front[1] - rear[1]) * (ball[0] - rear[0]) > 0;
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Tapes of cars, every dimension given, with triangles that close. */
const fullTape = fc.record({
  caster: between(-5, 12),
  camber: between(-4, 4),
  toe: between(-1, 1),
  sai: between(2, 18),
  upperFrontLength: between(220, 400),
  upperRearLength: between(220, 400),
  upperPivotSpacing: between(200, 350),
  lowerFrontLength: between(300, 500),
  lowerRearLength: between(300, 500),
  lowerPivotSpacing: between(220, 450),
  ballSpacing: between(200, 400),
  wheelCentreHeight: between(250, 400),
  lowerBallHeight: between(150, 250),
  upperFrontHeight: between(400, 550),
  upperRearHeight: between(400, 550),
  lowerFrontHeight: between(150, 300),
  lowerRearHeight: between(150, 300),
  track: between(1200, 1900),
  axleBehindFront: between(0, 4000),
  lowerBallInset: between(20, 120),
  lowerBallAhead: between(-20, 20),
  // Longer than its ends differ in height: the angle of an arm that stands on end cannot be read back to 1e-9.
  steeringArmLength: between(120, 220),
  tieOuterHeight: between(150, 250),
  tieRodLength: between(200, 450),
  tieInnerHeight: between(150, 300),
  upperPivotSkew: between(-20, 20),
  lowerPivotSkew: between(-20, 20),
  steeringArmAngle: between(-20, 20),
  tieRodSweep: between(-15, 15),
});
/** The same with some left out; their defaults need not close a triangle. */
const partTape = fc.tuple(fullTape, fc.subarray(TAPE_DIMENSIONS.map(({ name }) => name).filter(notNeeded)));
function notNeeded(name: string): boolean {
  return !['caster', 'camber', 'toe'].includes(name);
}

describe('points from a tape', () => {
  it('reproduce every dimension and angle to 1e-9', () => {
    fc.assert(
      fc.property(fullTape, fc.constantFrom('ahead', 'behind'), (tape, tie) => {
        fc.pre(closes(tape, 'upper') && closes(tape, 'lower'));
        const built = pointsFromTape({ ...tape, tie });
        const { camber, toe, ...dimensions } = tape;
        expect({ camber: built.camber, toe: built.toe }).toEqual({ camber, toe });
        expect(built.assumed).toEqual([]);
        const found = measure(built.points);
        expect(Object.keys(found).sort()).toEqual(Object.keys(dimensions).sort());
        for (const [name, value] of Object.entries(dimensions)) {
          expect(Math.abs(found[name]! - value), name).toBeLessThan(1e-9);
        }
        const side = built.points.tieOuter![0] - built.points.lowerBall![0];
        expect(Math.sign(side)).toBe(tie === 'ahead' ? 1 : -1);
        for (const which of ['upper', 'lower']) expect(ballOutboard(built.points, which)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it('take what is left out from the table and say so; what is given still holds exactly', () => {
    let count = 0;
    fc.assert(
      fc.property(partTape, ([full, left]) => {
        const tape = Object.fromEntries(Object.entries(full).filter(([name]) => !left.includes(name))) as Tape;
        let built: ReturnType<typeof pointsFromTape>;
        try {
          built = pointsFromTape(tape);
        } catch (error) {
          expect(error).toHaveProperty('field', expect.stringMatching(/^tape\.\w+(Length|Spacing)$/));
          return;
        }
        count++;
        expect([...built.assumed].sort()).toEqual([...left].sort());
        const found = measure(built.points);
        for (const [name, value] of Object.entries(built.used)) {
          if (name === 'camber' || name === 'toe') continue;
          expect(Math.abs(found[name]! - value), name).toBeLessThan(1e-9);
        }
        for (const [name, value] of Object.entries(tape)) expect(built.used[name]).toBe(value);
      }),
    );
    expect(count).toBeGreaterThan(20);
  });

  it('need no more than the measured angles', () => {
    const { points, assumed, used } = pointsFromTape({ caster: 4, camber: -0.5, toe: 0.1 });
    expect(assumed).toHaveLength(TAPE_DIMENSIONS.length - 3);
    expect(used).toMatchObject({ sai: 10, upperRearLength: 280, tieInnerHeight: 210 });
    expect(Object.values(points).flat().every(Number.isFinite)).toBe(true);
  });

  it('are known less well where more is assumed', () => {
    const angles = { caster: 4, camber: 0, toe: 0 };
    const all = Object.fromEntries(Object.entries(pointsFromTape(angles).used));
    expect(pointsFromTape(all).tolerance).toBeCloseTo(5, 12);
    expect(pointsFromTape(angles).tolerance).toBeGreaterThan(20);
    const exact = Object.fromEntries(Object.entries(all).map(([name, value]) => [name, { value, tolerance: 1 }]));
    expect(pointsFromTape(exact).tolerance).toBeCloseTo(1, 12);
  });
});

/** Whether the flat triangle of an arm closes with some room, worked out apart from the code. */
function closes(tape: Readonly<Record<string, number>>, which: 'upper' | 'lower'): boolean {
  const t = (name: string) => tape[name] as number;
  const slopes = Math.hypot(1, Math.tan((t('caster') * Math.PI) / 180), Math.tan((t('sai') * Math.PI) / 180));
  const ball = t('lowerBallHeight') + (which === 'upper' ? t('ballSpacing') / slopes : 0);
  const flat = (length: number, rise: number) => Math.sqrt(length ** 2 - rise ** 2);
  const front = flat(t(`${which}FrontLength`), t(`${which}FrontHeight`) - ball);
  const rear = flat(t(`${which}RearLength`), t(`${which}RearHeight`) - ball);
  const spacing = flat(t(`${which}PivotSpacing`), t(`${which}FrontHeight`) - t(`${which}RearHeight`));
  return spacing > Math.abs(front - rear) + 5 && spacing < front + rear - 5;
}
