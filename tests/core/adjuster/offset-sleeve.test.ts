import { describe, expect, it } from 'vitest';
import { offsetSleeve } from '../../../core/adjuster/offset-sleeve.ts';
import type { Adjuster, Car } from '../../../core/contract.ts';
import { adjusterPositions, planMoves, solveCorner } from '../../../core/index.ts';
import { instruction } from '../../tools/instruction.ts';
import { poseOf } from '../../tools/pose.ts';
import { randomSuspension, stream } from '../../tools/random-cars.ts';

const suspension = randomSuspension(stream(27), 'beam-front');
const sleeve = { id: 'sleeve', kind: 'offset-sleeve', degrees: 1.25, marks: 4, reference: 90 };

describe('an offset sleeve', () => {
  it('goes round in its marks', () => {
    expect(adjusterPositions(sleeve)).toEqual([0, 90, 180, 270]);
    expect(adjusterPositions({ ...sleeve, marks: 8 })).toHaveLength(8);
  });

  it('at its reference leaves the axle as it was measured', () => {
    expect(poseOf(suspension, [sleeve], { sleeve: 90 })).toEqual(poseOf(suspension));
  });

  it('a full turn on is where it was', () => {
    const [a, b] = [0, 360].map((position) => poseOf(suspension, [sleeve], { sleeve: position }));
    expect(b?.camber).toBeCloseTo(a?.camber ?? NaN, 10);
    expect(b?.caster).toBeCloseTo(a?.caster ?? NaN, 10);
  });

  it('names both angles', () => {
    expect(instruction(offsetSleeve, sleeve, 90, 180, 'LF')).toContain(
      'from 90° to 180° (0° = most camber, 90° = most caster)',
    );
  });

  it('may be written as a list of one, and is the same', () => {
    const listed = { ...sleeve, degrees: [1.25] } as never;
    expect(poseOf(suspension, [listed], { sleeve: 180 })).toEqual(poseOf(suspension, [sleeve], { sleeve: 180 }));
  });

  it('needs ball joints that sit in an axle', () => {
    for (const kind of ['double-wishbone', 'strut', 'trailing-arm', 'beam-rear', 'unknown']) {
      const given = randomSuspension(stream(3), kind);
      expect(() => solveCorner(given, [sleeve], {}), kind).toThrow(
        'this one needs an axle with ball joints of its own',
      );
    }
  });
});

const several = { id: 'sleeve', kind: 'offset-sleeve', degrees: [1, 0, 0.5], marks: 4, reference: 'plain' };

describe('offset sleeves of several tapers', () => {
  it('are the plain one, and each taper at each of its angles', () => {
    const all = ['plain', '0.5@0', '0.5@90', '0.5@180', '0.5@270', '1@0', '1@90', '1@180', '1@270'];
    expect(adjusterPositions(several)).toEqual(all);
    expect(adjusterPositions({ ...several, degrees: [0.5, 1] })).toEqual(all);
  });

  it('each tilts the axis as it would alone, counted from the plain one or from the one that was fitted', () => {
    const tilt = (adjuster: Adjuster, position: string | number) => {
      const { caster = NaN, sai = NaN } = poseOf(suspension, [adjuster], { sleeve: position });
      return { caster, sai };
    };
    const bare = poseOf(suspension);
    for (const [taper, at] of [
      [0.5, 0],
      [1, 90],
      [1, 210],
    ] as const) {
      const phi = (at * Math.PI) / 180;
      const leans = { caster: taper * Math.sin(phi), sai: -taper * Math.cos(phi) };
      const from = (fitted: string, by: { readonly caster: number; readonly sai: number }) => {
        const { caster, sai } = tilt({ ...several, reference: fitted }, `${taper}@${at}`);
        expect(caster).toBeCloseTo((bare.caster ?? NaN) + leans.caster - by.caster, 9);
        expect(sai).toBeCloseTo((bare.sai ?? NaN) + leans.sai - by.sai, 9);
      };
      from('plain', { caster: 0, sai: 0 });
      from('0.5@90', { caster: 0.5, sai: 0 });
      expect(tilt({ ...several, reference: '1@90' }, 'plain').caster).toBeCloseTo((bare.caster ?? NaN) - 1, 9);
    }
  });

  it('a plan takes the one that is needed and no thicker, and what its turn is off by counts', () => {
    const car: Car = {
      id: 'c',
      label: 'C',
      wheel: { rimDiameter: 420 },
      front: { suspension, adjusters: [{ ...several, degrees: [0.5, 1, 2], marks: 12 }], steered: true },
      rear: {
        suspension: { kind: 'beam-rear', points: { wheelCentre: [-2600, 780, 340] }, camber: 0, toe: 0 },
        adjusters: [],
        steered: false,
      },
    };
    const reading = { LF: { camber: -0.5, caster: 3 }, RF: { camber: 0.1, caster: 3 } };
    const spec = { front: { camber: { low: -0.2, high: 0.3 }, caster: { low: 2.7, high: 3.3 } } };
    for (const style of ['closest', 'practical'] as const) {
      const plan = planMoves({ car, spec, reading, settings: {}, style });
      expect(plan.inWindow).toBe(true);
      expect(plan.moves.find(({ corner }) => corner === 'LF')?.to).toMatch(/^0.5@/);
      expect(plan.chance).toBeGreaterThan(0);
    }
    // What a turn by hand is off by counts: sharply set it is surer.
    const sure = (tolerance: number) => {
      const adjusters = [{ ...several, degrees: [0.5, 1, 2], marks: 12, tolerance }];
      return planMoves({ car: { ...car, front: { ...car.front, adjusters } }, spec, reading, settings: {} }).chance;
    };
    expect(sure(0)).toBeGreaterThan(sure(30));
  });

  it('says which sleeve and where its mark goes, seen alike on both sides', () => {
    const say = (from: string, to: string, corner: 'LF' | 'RF' = 'LF') =>
      instruction(offsetSleeve, several, from, to, corner);
    expect(say('plain', '1@90')).toBe(
      'Free the upper ball joint, change the plain sleeve for the 1° one, its mark to the rear; seat it again.',
    );
    expect(say('1@90', '0.5@30')).toContain(
      'change the 1° sleeve for the 0.5° one, its mark 30° from outboard towards the rear',
    );
    expect(say('0.5@30', '0.5@270')).toContain('turn the 0.5° sleeve so that its mark stands to the front');
    expect(say('0.5@30', 'plain')).toContain('change the 0.5° sleeve for the plain one');
    expect(say('plain', '1@315')).toContain('its mark half way between the front and outboard;');
    expect(say('plain', '1@330')).toContain('30° from outboard towards the front');
    expect(say('plain', '1@165')).toContain('15° from inboard towards the rear');
    expect(say('plain', '1@30', 'RF')).toBe(say('plain', '1@30', 'LF'));
  });

  it.each(['2@90', '1', '@90', 'none', 90])('refuses to stand at %s', (position) => {
    expect(() => solveCorner(suspension, [several], { sleeve: position })).toThrow(
      'plain, or taper@angle with a taper of 0.5, 1, such as 0.5@90',
    );
  });

  it.each([
    [{ degrees: [0] }, 'adjusters[0].degrees'],
    [{ degrees: [] }, 'adjusters[0].degrees'],
    [{ degrees: [1, 11] }, 'adjusters[0].degrees[1]: 11'],
    [{ degrees: 0 }, 'adjusters[0].degrees: 0'],
    [{ reference: 90 }, 'adjusters[0].reference: 90'],
    [{ degrees: 1 }, 'adjusters[0].reference: "plain"'],
  ])('%o is refused by name', (wrong, field) => {
    expect(() => solveCorner(suspension, [{ ...several, ...wrong } as never], {})).toThrow(field);
  });
});
