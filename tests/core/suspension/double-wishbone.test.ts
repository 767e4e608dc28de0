import { describe, expect, it } from 'vitest';
import { InputError, solveCorner } from '../../../core/index.ts';
import { apart, poseOf } from '../../tools/pose.ts';
import { randomSuspension, stream } from '../../tools/random-cars.ts';

const suspension = randomSuspension(stream(11), 'double-wishbone');

describe('a double wishbone', () => {
  it('stands as it was entered', () => {
    const { camber, toe, caster = NaN, sai = NaN, includedAngle } = poseOf(suspension);
    const { upperBall, lowerBall } = suspension.points as Record<string, [number, number, number]>;
    const [x, y, z] = [0, 1, 2].map((i) => upperBall![i]! - lowerBall![i]!) as [number, number, number];
    expect(camber).toBeCloseTo(suspension.camber, 10);
    expect(toe).toBeCloseTo(suspension.toe, 10);
    expect(Math.tan((caster * Math.PI) / 180)).toBeCloseTo(-x / z, 10);
    expect(Math.tan((sai * Math.PI) / 180)).toBeCloseTo(-y / z, 10);
    expect(includedAngle).toBeCloseTo(sai + camber, 12);
  });

  it('keeps its ball joints as far apart as the knuckle has them', () => {
    const { points } = poseOf(suspension, [], {}, { travel: 30, rack: 8 });
    expect(apart(points.upperBall, points.lowerBall)).toBeCloseTo(
      apart(suspension.points.upperBall, suspension.points.lowerBall),
      8,
    );
    expect(points.wheelCentre?.[2]).toBeCloseTo((suspension.points.wheelCentre?.[2] ?? NaN) + 30, 9);
  });

  it('is steered by its rack: the rod is behind, so that pushed outboard it turns the wheel in', () => {
    expect(poseOf(suspension, [], {}, { rack: 5 }).toe).toBeGreaterThan(suspension.toe + 1);
    expect(poseOf(suspension, [], {}, { rack: -5 }).toe).toBeLessThan(suspension.toe - 1);
  });

  it('out of reach is an answer, not an exception', () => {
    const far = solveCorner(suspension, [], {}, { travel: 900 });
    expect(far).toMatchObject({ reachable: false, verdict: { converged: false, reason: 'cannot-reach' } });
  });

  it('whose lower arm is one line is refused: nothing holds the wheel fore and aft', () => {
    const { lowerBall = [0, 0, 0], lowerFront = [0, 0, 0] } = suspension.points;
    const inLine = [0, 1, 2].map((i) => lowerBall[i]! + 0.8 * (lowerFront[i]! - lowerBall[i]!)) as [
      number,
      number,
      number,
    ];
    const loose = { ...suspension, points: { ...suspension.points, lowerRear: inLine } };
    expect(() => solveCorner(loose, [], {})).toThrow(InputError);
    expect(() => solveCorner(loose, [], {})).toThrow('these leave it free to move');
  });
});
