import { describe, expect, it } from 'vitest';
import { InputError, solveCorner } from '../../../core/index.ts';
import { apart, poseOf } from '../../tools/pose.ts';
import { randomSuspension, stream } from '../../tools/random-cars.ts';

const suspension = randomSuspension(stream(13), 'five-link');

describe('five links', () => {
  it('have camber and toe, but no caster and no SAI: they turn about no fixed axis', () => {
    const pose = poseOf(suspension);
    expect(pose.camber).toBeCloseTo(suspension.camber, 10);
    expect(pose.toe).toBeCloseTo(suspension.toe, 10);
    expect(pose).not.toHaveProperty('caster');
    expect(pose).not.toHaveProperty('sai');
    expect(pose).not.toHaveProperty('includedAngle');
  });

  it.each([1, 2, 3, 4, 5])('link %d may be a rod: two threads on it count both pitches', (n) => {
    const rod = { id: 'rod', kind: 'threaded-rod', links: [`inner${n}`], stepTurns: 0.5, range: [-4, 4], reference: 1 };
    const { points } = poseOf(suspension, [{ ...rod, lead: 3 }], { rod: 2.5 });
    const was = apart(suspension.points[`inner${n}`], suspension.points[`outer${n}`]);
    expect(apart(points[`inner${n}`], points[`outer${n}`])).toBeCloseTo(was + 4.5, 8);
  });

  it('have no steering rack', () => {
    expect(() => solveCorner(suspension, [], {}, { rack: 1 })).toThrow(InputError);
    expect(() => solveCorner(suspension, [], {}, { rack: 1 })).toThrow('Five links has no steering rack');
  });
});
