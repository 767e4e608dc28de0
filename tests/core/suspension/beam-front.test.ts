import { describe, expect, it } from 'vitest';
import { solveCorner } from '../../../core/index.ts';
import { poseOf } from '../../tools/pose.ts';
import { randomSuspension, stream } from '../../tools/random-cars.ts';

const suspension = randomSuspension(stream(15), 'beam-front');
const rod = {
  id: 'rod',
  kind: 'threaded-rod',
  links: ['tieInner'],
  lead: 1.5,
  stepTurns: 0.25,
  range: [-4, 4],
  reference: 0,
};

describe('a rigid front axle', () => {
  it('stands as it was entered, both ball joints in their seats', () => {
    const { camber, toe, points, caster } = poseOf(suspension);
    expect(camber).toBeCloseTo(suspension.camber, 10);
    expect(toe).toBeCloseTo(suspension.toe, 10);
    expect(caster).toBeDefined();
    for (const [name, point] of Object.entries(suspension.points)) {
      expect(points[name]).toEqual(point.map((x) => expect.closeTo(x, 9)));
    }
  });

  it('goes up and down with all that carries it: no angle changes', () => {
    const [here, there] = [poseOf(suspension), poseOf(suspension, [], {}, { travel: 40 })];
    for (const angle of ['camber', 'toe', 'caster', 'sai'] as const) expect(there[angle]).toBe(here[angle]);
    for (const [name, point] of Object.entries(here.points)) expect(there.points[name]?.[2]).toBe(point[2] + 40);
  });

  it('the rod turns the knuckle about its ball joints, which stay', () => {
    const at = poseOf(suspension, [rod], { rod: 2 });
    expect(Math.abs(at.toe - suspension.toe)).toBeGreaterThan(0.5);
    for (const ball of ['upperBall', 'lowerBall']) {
      expect(at.points[ball]).toEqual(suspension.points[ball]?.map((x) => expect.closeTo(x, 8)));
    }
    expect(at.caster).toBeCloseTo(poseOf(suspension).caster ?? NaN, 9);
  });

  it('has no strut to tilt', () => {
    const bolt = { id: 'c', kind: 'clamp-bolt', step: 1, range: [-1, 1], reference: 0 };
    expect(() => solveCorner(suspension, [bolt], {})).toThrow('adjusters[0].kind: "clamp-bolt" is not allowed');
  });
});
