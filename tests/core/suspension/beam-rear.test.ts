import { describe, expect, it } from 'vitest';
import { solveCorner } from '../../../core/index.ts';
import { poseOf } from '../../tools/pose.ts';

const suspension = {
  kind: 'beam-rear',
  camber: -0.75,
  toe: 0.125,
  points: { wheelCentre: [-2600, 760, 330] as const },
};

describe('a rigid rear axle', () => {
  it('stands as it was entered and needs no more than its wheel centre', () => {
    const pose = poseOf(suspension);
    expect(pose).toMatchObject({ camber: expect.closeTo(-0.75, 12), toe: expect.closeTo(0.125, 12) });
    expect(pose.wheelCentre).toEqual([-2600, 760, 330]);
    expect(pose).not.toHaveProperty('caster');
  });

  it('goes up and down as it is', () => {
    const pose = poseOf(suspension, [], {}, { travel: -25 });
    expect(pose.wheelCentre).toEqual([-2600, 760, 305]);
    expect([pose.camber, pose.toe]).toEqual([poseOf(suspension).camber, poseOf(suspension).toe]);
  });

  it('takes what sits between hub and axle, and nothing that moves a joint', () => {
    const shim = { id: 's', kind: 'wedge-shim', degrees: [0.5], marks: 8, reference: 'none' };
    expect(poseOf(suspension, [shim], { s: '0.5@90' }).toe).toBeCloseTo(0.625, 10);
    const slide = {
      id: 's',
      kind: 'slide',
      at: 'wheelCentre',
      direction: [0, 1, 0],
      step: 1,
      range: [-1, 1],
      reference: 0,
    };
    expect(() => solveCorner(suspension, [slide], {})).toThrow('adjusters[0].kind: "slide" is not allowed');
  });
});
