import { describe, expect, it } from 'vitest';
import { solveCorner } from '../../../core/index.ts';
import { poseOf } from '../../tools/pose.ts';

const chart = {
  id: 'cam',
  kind: 'effect-table',
  reference: 3,
  positions: [
    { label: 3, camber: 0, caster: 0, toe: 0 },
    { label: 4, camber: 0.25, caster: -0.5, toe: 0.1 },
  ],
};

describe('a suspension without geometry', () => {
  it('needs nothing but its kind', () => {
    expect(poseOf({ kind: 'unknown' } as never)).toMatchObject({ camber: 0, toe: 0, caster: 0, points: {} });
    expect(poseOf({ kind: 'unknown' } as never)).not.toHaveProperty('wheelCentre');
  });

  it('has the chart’s effects and no others, caster among them', () => {
    const pose = poseOf({ kind: 'unknown', points: {}, camber: -1, toe: 0.5 }, [chart], { cam: 4 });
    expect(pose.camber).toBeCloseTo(-0.75, 12);
    expect(pose.caster).toBeCloseTo(-0.5, 12);
    expect(pose.toe).toBeCloseTo(0.6, 12);
    expect(pose).not.toHaveProperty('sai');
  });

  it('refuses points, and adjusters that would move one', () => {
    const given = { kind: 'unknown', points: { upperBall: [0, 0, 0] as const }, camber: 0, toe: 0 };
    expect(() => solveCorner(given, [], {})).toThrow('suspension.points.upperBall: [0,0,0] is not allowed');
    const shim = {
      id: 's',
      kind: 'shim-pack',
      at: 'upperFront',
      direction: [0, 1, 0],
      sizes: [1],
      max: 4,
      reference: 0,
    };
    expect(() => solveCorner({ ...given, points: {} }, [shim], {})).toThrow(
      'adjusters[0].kind: "shim-pack" is not allowed',
    );
  });
});
