/** Long, as each kind has an account of its own. Points from a tape, for every kind that a tape can measure: each dimension comes back off the points. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../../core/contract.ts';
import { pointsFromTape, solveCorner, suspensionKinds } from '../../../core/index.ts';
import { tapeLayouts } from '../../../core/suspension/tape/catalogue.ts';
import { TAPE_TOLERANCE, type Tape, type TapeLayout } from '../../../core/suspension/tape/tape.ts';

const deg = (r: number) => (r * 180) / Math.PI;
type Points = Readonly<Record<string, Vec3>>;

/** Every dimension, measured off the points: an account of its own of what each one means. */
function measure(kind: string, p: Points): Record<string, number> {
  if (kind === 'five-link') return measureLinks(p);
  const at = (name: string): Vec3 => p[name] as Vec3;
  const apart = (a: string, b: string) => Math.hypot(...[0, 1, 2].map((i) => at(a)[i]! - at(b)[i]!));
  const high = (name: string) => at(name)[2];
  const plan = (from: string, to: string) => [at(to)[0] - at(from)[0], at(to)[1] - at(from)[1]] as const;
  const top = kind === 'strut' ? 'strutTop' : 'upperBall';
  const axis = [0, 1, 2].map((i) => at(top)[i]! - at('lowerBall')[i]!) as [number, number, number];
  const arm = (which: string) => {
    const [x, y] = plan(`${which}Rear`, `${which}Front`);
    return {
      [`${which}FrontLength`]: apart(`${which}Front`, `${which}Ball`),
      [`${which}RearLength`]: apart(`${which}Rear`, `${which}Ball`),
      [`${which}PivotSpacing`]: apart(`${which}Front`, `${which}Rear`),
      [`${which}FrontHeight`]: high(`${which}Front`),
      [`${which}RearHeight`]: high(`${which}Rear`),
      [`${which}PivotSkew`]: deg(Math.atan2(y, x)),
    };
  };
  const [armX, armY] = plan('lowerBall', 'tieOuter');
  const [rodX, rodY] = plan('tieOuter', 'tieInner');
  const strut = () => ({
    strutLength: apart('strutTop', 'strutLower'),
    strutLowerHeight: high('strutLower'),
    strutLowerInset: at('lowerBall')[1] - at('strutLower')[1],
    strutLowerAhead: at('strutLower')[0] - at('lowerBall')[0],
  });
  return {
    ...(kind === 'strut' ? strut() : { ...arm('upper'), ballSpacing: apart('upperBall', 'lowerBall') }),
    ...arm('lower'),
    caster: deg(Math.atan2(-axis[0], axis[2])),
    sai: deg(Math.atan2(-axis[1], axis[2])),
    wheelCentreHeight: high('wheelCentre'),
    lowerBallHeight: high('lowerBall'),
    track: 2 * at('wheelCentre')[1],
    axleBehindFront: -at('wheelCentre')[0],
    lowerBallInset: at('wheelCentre')[1] - at('lowerBall')[1],
    lowerBallAhead: at('lowerBall')[0] - at('wheelCentre')[0],
    steeringArmLength: apart('lowerBall', 'tieOuter'),
    tieOuterHeight: high('tieOuter'),
    tieRodLength: apart('tieOuter', 'tieInner'),
    tieInnerHeight: high('tieInner'),
    steeringArmAngle: deg(Math.atan2(-armY, Math.abs(armX))),
    tieRodSweep: deg(Math.atan2(rodX, -rodY)),
  };
}

/** The same of five links; the hub's face stands the wheel's offset outboard of its middle, which no point tells. */
function measureLinks(p: Points): Record<string, number> {
  const hub = p.wheelCentre!;
  const links = [1, 2, 3, 4, 5].map((n) => {
    const [inner, outer] = [p[`inner${n}`]!, p[`outer${n}`]!];
    return {
      [`link${n}Length`]: Math.hypot(inner[0] - outer[0], inner[1] - outer[1], inner[2] - outer[2]),
      [`inner${n}Ahead`]: inner[0] - hub[0],
      [`inner${n}Height`]: inner[2],
      [`outer${n}Ahead`]: outer[0] - hub[0],
      [`outer${n}Height`]: outer[2],
      // From the wheel's middle: its offset comes to it.
      [`outer${n}Inset`]: hub[1] - outer[1],
    };
  });
  return Object.assign({}, ...links, {
    wheelCentreHeight: hub[2],
    track: 2 * hub[1],
    axleBehindFront: -hub[0],
  });
}

/** What of the dimensions stands beside the points: the wheel's offset, which is in every inset. */
const besides = (kind: string, used: Readonly<Record<string, number>>, name: string): number =>
  kind === 'five-link' && /Inset$/.test(name) ? used.wheelOffset! : 0;

/** Whether an arm's ball lies outboard of the line through its pivots, in plan. */
function ballOutboard(p: Points, which: string): boolean {
  const [front, rear, ball] = [p[`${which}Front`]!, p[`${which}Rear`]!, p[`${which}Ball`]!];
  return (front[0] - rear[0]) * (ball[1] - rear[1]) - (front[1] - rear[1]) * (ball[0] - rear[0]) > 0;
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const ANGLES = { caster: between(-5, 12), camber: between(-4, 4), toe: between(-1, 1), sai: between(2, 18) };
const arm = (which: 'upper' | 'lower') => {
  const [length, spacing, height] =
    which === 'upper'
      ? [between(220, 400), between(200, 350), between(400, 550)]
      : [between(300, 500), between(220, 450), between(150, 300)];
  return {
    [`${which}FrontLength`]: length,
    [`${which}RearLength`]: length,
    [`${which}PivotSpacing`]: spacing,
    [`${which}FrontHeight`]: height,
    [`${which}RearHeight`]: height,
    [`${which}PivotSkew`]: between(-20, 20),
  };
};
const COMMON = {
  ...ANGLES,
  ...arm('lower'),
  wheelCentreHeight: between(250, 400),
  lowerBallHeight: between(150, 250),
  track: between(1200, 1900),
  axleBehindFront: between(0, 4000),
  lowerBallInset: between(20, 120),
  lowerBallAhead: between(-20, 20),
  // Longer than its ends differ in height: the angle of an arm that stands on end cannot be read back to 1e-9.
  steeringArmLength: between(120, 220),
  tieOuterHeight: between(150, 250),
  tieRodLength: between(200, 450),
  tieInnerHeight: between(150, 300),
  steeringArmAngle: between(-20, 20),
  tieRodSweep: between(-15, 15),
};
/** Tapes of cars of each kind, every dimension given, nearly all with triangles that close. */
const FULL: Readonly<Record<string, fc.Arbitrary<Record<string, number>>>> = {
  'double-wishbone': fc.record({ ...COMMON, ...arm('upper'), ballSpacing: between(200, 400) }),
  strut: fc.record({
    ...COMMON,
    strutLength: between(300, 600),
    strutLowerHeight: between(280, 500),
    strutLowerInset: between(-20, 120),
    strutLowerAhead: between(-60, 60),
  }),
  'five-link': fc.record({
    camber: ANGLES.camber,
    toe: ANGLES.toe,
    ...Object.assign(
      {},
      ...[1, 2, 3, 4, 5].map((n) => ({
        [`link${n}Length`]: between(340, 600),
        // Two joints at one place are no five links.
        [`inner${n}Ahead`]: between(100 * n - 330, 100 * n - 270),
        [`inner${n}Height`]: between(200, 350),
        [`outer${n}Ahead`]: between(60 * n - 190, 60 * n - 160),
        [`outer${n}Height`]: between(200, 350),
        [`outer${n}Inset`]: between(60, 160),
      })),
    ),
    wheelCentreHeight: between(250, 400),
    track: between(1200, 1900),
    wheelOffset: between(-20, 60),
    axleBehindFront: between(0, 4000),
  }),
};
const NEEDED: Readonly<Record<string, readonly string[]>> = { 'five-link': ['camber', 'toe'] };
const BASE = { caster: 4, camber: -0.5, toe: 0.1 };
const ARMS: Readonly<Record<string, readonly ('upper' | 'lower')[]>> = {
  'double-wishbone': ['upper', 'lower'],
  strut: ['lower'],
};

const taped = Object.entries(tapeLayouts).map(([kind, layout]) => ({ kind, layout }));

describe.each(taped)('points of a $kind from a tape', ({ kind, layout }) => {
  const full = FULL[kind] as (typeof FULL)[string];
  const build = (tape: Readonly<Record<string, unknown>>) => pointsFromTape({ ...tape, kind });
  const names = layout.dimensions.map(({ name }) => name);
  const needed = NEEDED[kind] ?? ['caster', 'camber', 'toe'];
  const notNeeded = (name: string) => !needed.includes(name);
  const base = Object.fromEntries(Object.entries(BASE).filter(([name]) => needed.includes(name)));

  it('reproduce every dimension and angle to 1e-9', () => {
    fc.assert(
      fc.property(full, fc.constantFrom('ahead', 'behind'), (tape, tie) => {
        fc.pre((ARMS[kind] ?? []).every((which) => closes(tape, which)));
        const built = build({ ...tape, tie });
        const { camber, toe, ...dimensions } = tape;
        expect({ camber: built.camber, toe: built.toe }).toEqual({ camber, toe });
        expect(built.assumed).toEqual([]);
        const found = measure(kind, built.points);
        expect(Object.keys(found).sort()).toEqual(
          Object.keys(dimensions)
            .filter((name) => name !== 'wheelOffset')
            .sort(),
        );
        expect(Object.keys(tape).sort()).toEqual([...names].sort());
        for (const [name, value] of Object.entries(dimensions)) {
          if (name === 'wheelOffset') continue;
          expect(Math.abs(found[name]! + besides(kind, built.used, name) - value), name).toBeLessThan(1e-9);
        }
        if (kind !== 'five-link') {
          const side = built.points.tieOuter![0] - built.points.lowerBall![0];
          expect(Math.sign(side)).toBe(tie === 'ahead' ? 1 : -1);
        }
        for (const which of ARMS[kind] ?? []) expect(ballOutboard(built.points, which)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  it('are a suspension with the measured angles', () => {
    fc.assert(
      fc.property(full, (tape) => {
        fc.pre((ARMS[kind] ?? []).every((which) => closes(tape, which)));
        const { points, camber, toe } = build(tape);
        const pose = solveCorner({ kind, points, camber, toe }, [], {});
        if (!pose.reachable) throw new Error(pose.message);
        for (const angle of (['camber', 'toe', 'caster', 'sai'] as const).filter((one) => names.includes(one))) {
          expect(Math.abs((pose[angle] ?? NaN) - (tape[angle] as number)), angle).toBeLessThan(1e-9);
        }
      }),
    );
  });

  it('take what is left out from the table and say so; what is given still holds exactly', () => {
    let count = 0;
    fc.assert(
      fc.property(full, fc.subarray(names.filter(notNeeded)), (all, left) => {
        const tape: Tape = Object.fromEntries(Object.entries(all).filter(([name]) => !left.includes(name)));
        let built: ReturnType<typeof pointsFromTape>;
        try {
          built = build(tape);
        } catch (error) {
          expect(error).toHaveProperty('field', expect.stringMatching(/^tape\.\w+(Length|Spacing)$/));
          return;
        }
        count++;
        expect([...built.assumed].sort()).toEqual([...left].sort());
        expect(Object.keys(built.used).sort()).toEqual([...names].sort());
        const found = measure(kind, built.points);
        for (const [name, value] of Object.entries(built.used)) {
          if (name === 'camber' || name === 'toe' || name === 'wheelOffset') continue;
          expect(Math.abs(found[name]! + besides(kind, built.used, name) - value), name).toBeLessThan(1e-9);
        }
        for (const [name, value] of Object.entries(tape)) expect(built.used[name]).toBe(value);
      }),
    );
    expect(count).toBeGreaterThan(20);
  });

  it('need no more than the measured angles', () => {
    const { points, assumed, used } = build(base);
    expect(assumed).toEqual(names.filter(notNeeded));
    for (const { name, otherwise } of layout.dimensions) {
      if (typeof otherwise === 'number') expect(used[name]).toBe(otherwise);
      else if (otherwise && used[otherwise] !== undefined) expect(used[name]).toBe(used[otherwise]);
    }
    expect(Object.values(points).flat().every(Number.isFinite)).toBe(true);
  });

  it('are known less well where more is assumed', () => {
    const angles = base;
    const all = build(angles).used;
    expect(build(all).tolerance).toBeCloseTo(TAPE_TOLERANCE, 12);
    expect(build(angles).tolerance).toBeGreaterThan(20);
    const exact = Object.fromEntries(Object.entries(all).map(([name, value]) => [name, { value, tolerance: 1 }]));
    expect(build(exact).tolerance).toBeCloseTo(1, 12);
  });

  it('has a table that agrees with itself: defaults within limits, and names that exist', () => {
    for (const { name, low, high, otherwise, why } of (layout as TapeLayout).dimensions) {
      expect(low, name).toBeLessThan(high);
      expect(why.length, name).toBeGreaterThan(5);
      if (typeof otherwise !== 'number') continue;
      expect(otherwise >= low && otherwise <= high, name).toBe(true);
    }
    expect(new Set(names).size).toBe(names.length);
  });
});

it('every kind that a tape can measure has its tapes here', () => {
  expect(Object.keys(FULL).sort()).toEqual(taped.map(({ kind }) => kind).sort());
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

describe('what the build card shows beside a dimension', () => {
  it.each(taped)('$kind: rings points that the kind has', ({ kind, layout }) => {
    for (const { between, name } of layout.dimensions) {
      expect(between.length, name).toBeGreaterThan(0);
      for (const point of between) expect(suspensionKinds[kind]?.points, name).toContain(point);
    }
  });

  it.each(taped)('$kind: no two dimensions share a label', ({ layout }) => {
    const labels = layout.dimensions.map(({ label }) => label);
    expect(new Set(labels).size).toBe(labels.length);
  });
});
