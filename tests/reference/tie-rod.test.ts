/** What a turn of the tie rod does: a published rate, and on which side of the axle it lengthens for toe-in. */
import { describe, expect, it, test } from 'vitest';
import { solveCorner } from '../../core/ask/solve-corner.ts';
import { pointsFromTape } from '../../core/suspension/tape/points-from-tape.ts';

const rod = {
  id: 'rod',
  name: 'Tie rod',
  kind: 'threaded-rod',
  links: ['tieInner'],
  lead: 1.5,
  stepTurns: 0.25,
  range: [-4, 4],
  reference: 0,
};

/** Toe after `turns` of the rod, on an upright steering axis with an arm of 99.9 mm square to it. */
function toeAfter(turns: number, tie: 'ahead' | 'behind'): number {
  const built = pointsFromTape({ caster: 0, sai: 0, camber: 0, toe: 0, steeringArmLength: 99.9, tie });
  const { points, camber, toe } = built;
  const pose = solveCorner({ kind: 'double-wishbone', points, camber, toe }, [rod], { rod: turns });
  if (!pose.reachable) throw new Error(pose.message);
  return pose.toe;
}

describe('one turn of a tie rod', () => {
  it('is 0.86° on the Hyundai Santa Fe 2004 (99.9 mm arm, implied at 1.5 mm pitch)', () => {
    // Half a turn each way: the rate at straight ahead.
    const rate = toeAfter(0.5, 'behind') - toeAfter(-0.5, 'behind');
    expect(Math.abs(rate - 0.86)).toBeLessThan(0.005);
  });

  test.each([
    ['behind the axle lengthens for toe-in', 'behind', 1],
    ['ahead of the axle shortens for toe-in', 'ahead', -1],
  ] as const)('%s', (_, tie, sign) => {
    expect(Math.sign(toeAfter(1, tie))).toBe(sign);
    expect(Math.sign(toeAfter(-1, tie))).toBe(-sign);
  });
});
