/** What a pose is besides its points: how soon it is found, what a chart adds, what a suspension has not. */
import { describe, expect, it } from 'vitest';
import type { Adjuster, Suspension, Vec3 } from '../../../core/contract.ts';
import { sideEffects, solveCorner, suspensionKinds } from '../../../core/index.ts';
import { Mechanism } from '../../../core/pose/mechanism.ts';
import { poseOf } from '../../tools/pose.ts';

import { between, LAYOUTS, randomSuspension, rod, stream } from '../../tools/random-cars.ts';

const suspensionOf = (kind: string): Suspension => ({ kind, points: LAYOUTS[kind] ?? {}, camber: -1, toe: 0.1 });

describe("Newton's method", () => {
  // Each step squares what is left, as a share of some hundred millimetres: of a half, six steps leave 0.5^64 of it,
  // less than a millionth of a millionth of a millimetre. With any part of the derivative or of the step wrong it
  // would be a factor each time, and many more steps.
  it.each(['double-wishbone', 'strut', 'five-link', 'beam-front', 'trailing-arm'])(
    'finds a %s in few steps',
    (kind) => {
      for (let seed = 1; seed <= 12; seed++) {
        const suspension = randomSuspension(stream(seed * 17), kind);
        for (const travel of [-60, -20, 60]) {
          for (const rack of suspensionKinds[kind]?.rack ? [-40, 0, 25, 40] : [0]) {
            const { verdict } = solveCorner(suspension, [], {}, { travel, rack });
            expect(verdict).toMatchObject({ converged: true, reason: 'ok' });
            expect(verdict.residual).toBeLessThan(1e-9);
            expect(verdict.iterations).toBeLessThanOrEqual(6);
          }
        }
      }
    },
  );

  it('finds the same from a pose beside it', () => {
    for (const kind of ['double-wishbone', 'strut', 'five-link', 'beam-front', 'beam-linked']) {
      const suspension = randomSuspension(stream(kind.length), kind);
      const adjusters = [
        rod('rod', Object.keys(suspension.points).find((name) => /tieInner|inner5|upperBody/.test(name)) ?? '', 6),
      ];
      const other = suspensionKinds[kind]?.rigidAxle ? [{ suspension, adjusters: [] }] : [];
      const model = new Mechanism([{ suspension, adjusters }, ...other]);
      const [params, out, again] = [
        model.parameters([{ rod: 2.5 }]),
        new Float64Array(model.numbers),
        new Float64Array(model.numbers),
      ];
      expect(model.angles(model.parameters([{ rod: 2.4 }]), out)).toBe(true);
      const near = model.stands();
      expect(model.angles(params.slice(), out)).toBe(true);
      expect(model.angles(params.slice(), again, near)).toBe(true);
      again.forEach((value, i) => {
        expect(value).toBeCloseTo(out[i] ?? Number.NaN, 8);
      });
      expect(Math.abs(out[0] ?? 0)).toBeLessThan(20);
    }
  });

  it('has nothing to do where nothing was moved', () => {
    for (const kind of ['double-wishbone', 'five-link']) {
      expect(poseOf(suspensionOf(kind)).verdict.iterations).toBe(0);
    }
  });
});

describe('the numbers that a plan goes by', () => {
  it('are those of the pose: of each wheel, and of the body between two', () => {
    for (const kind of ['double-wishbone', 'five-link', 'beam-linked']) {
      for (let seed = 1; seed <= 5; seed++) {
        const random = stream(seed * 23);
        const suspension = randomSuspension(random, kind);
        const links = kind === 'beam-linked' ? ['lowerBody', 'upperBody'] : [];
        const side = { suspension, adjusters: links.map((link) => rod(link, link, 3)) };
        const mechanism = new Mechanism(links.length > 0 ? [side, side] : [side]);
        const settings = mechanism.sides.map(() => Object.fromEntries(links.map((id) => [id, between(random, -2, 2)])));
        const numbers = new Float64Array(mechanism.numbers);
        expect(mechanism.angles(mechanism.parameters(settings), numbers)).toBe(true);
        const pose = mechanism.pose(settings);
        if (!pose.reachable) throw new Error('no pose');
        const wheels = pose.corners.flatMap(({ camber, caster = 0, toe }) => [camber, caster, toe]);
        const body = links.length > 0 ? [pose.body.pitch, pose.body.lateral] : [];
        expect([...numbers]).toEqual([...wheels, ...body]);
        if (links.length > 0) expect(Math.abs(pose.body.pitch)).toBeGreaterThan(0.01);
      }
    }
  });

  it('are none where what they hang on is no number', () => {
    const mechanism = new Mechanism([{ suspension: suspensionOf('double-wishbone'), adjusters: [] }]);
    const numbers = new Float64Array(mechanism.numbers);
    const params = mechanism.parameters([{}]);
    expect(mechanism.angles(params, numbers)).toBe(true);
    params.fill(Number.NaN);
    expect(mechanism.angles(params, numbers)).toBe(false);
  });
});

describe('a chart on a suspension with points', () => {
  const kit: Adjuster = {
    ...{ id: 'kit', kind: 'effect-table', reference: 'A' },
    positions: [{ label: 'A' }, { label: 'B', camber: 0.25, caster: -0.5, toe: 0.125 }, { label: 'C', camber: 1 }],
  };

  it('adds what it prints to what the geometry says', () => {
    for (const kind of ['double-wishbone', 'five-link', 'beam-rear']) {
      const [was, now] = ['A', 'B'].map((at) => poseOf(suspensionOf(kind), [kit], { kit: at }));
      expect((now?.camber ?? NaN) - (was?.camber ?? NaN)).toBeCloseTo(0.25, 12);
      expect((now?.toe ?? NaN) - (was?.toe ?? NaN)).toBeCloseTo(0.125, 12);
      expect((now?.caster ?? NaN) - (was?.caster ?? 0)).toBeCloseTo(-0.5, 12);
    }
  });

  it('gives caster to a wheel without steering axis only where it prints some', () => {
    expect(poseOf(suspensionOf('five-link'), [kit], { kit: 'C' })).not.toHaveProperty('caster');
    expect(poseOf(suspensionOf('five-link'), [kit], { kit: 'B' }).caster).toBe(-0.5);
  });
});

describe('what a suspension has not', () => {
  it('is a rack: the rear one is not pushed', () => {
    const push = (kind: string) => () => solveCorner(suspensionOf(kind), [], {}, { rack: 5 });
    expect(push('five-link')).toThrow(expect.objectContaining({ name: 'InputError', field: 'options.rack' }));
    expect(push('double-wishbone')).not.toThrow();
  });

  it('is a height of its own: on a rigid axle no bump moves the wheel against it', () => {
    for (const kind of ['beam-front', 'beam-rear']) {
      const effects = sideEffects(suspensionOf(kind), [], {});
      expect(effects).not.toHaveProperty('bumpSteer');
      expect(effects).not.toHaveProperty('camberGain');
      const [still, raised] = [0, 30].map((travel) => poseOf(suspensionOf(kind), [], {}, { travel }));
      expect([raised?.camber, raised?.toe]).toEqual([still?.camber, still?.toe]);
      for (const [name, point] of Object.entries(raised?.points ?? {})) {
        expect(point[2] - (still?.points[name]?.[2] ?? NaN), name).toBeCloseTo(30, 9);
      }
    }
  });

  it('are links that hold: five that are parallel leave the wheel free', () => {
    const points: Record<string, Vec3> = { wheelCentre: [0, 780, 340] };
    for (let i = 1; i <= 5; i++) {
      points[`inner${i}`] = [60 * i, 300, 150 + 60 * i];
      points[`outer${i}`] = [60 * i, 650, 150 + 60 * i];
    }
    const free = { kind: 'five-link', points, camber: 0, toe: 0 };
    expect(() => solveCorner(free, [], {})).toThrow(
      expect.objectContaining({ name: 'InputError', field: 'suspension.points' }),
    );
  });
});
