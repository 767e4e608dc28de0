import { describe, expect, it } from 'vitest';
import { indexedCam } from '../../../core/adjuster/indexed-cam.ts';
import { adjusterPositions, solveCorner } from '../../../core/index.ts';
import { instruction } from '../../tools/instruction.ts';
import { poseOf } from '../../tools/pose.ts';
import { randomSuspension, stream } from '../../tools/random-cars.ts';

const suspension = randomSuspension(stream(22), 'double-wishbone');
const cam = {
  id: 'cam',
  kind: 'indexed-cam',
  at: 'upperRear',
  reference: 1,
  positions: [
    { label: 1, offset: [0, 0, 0] },
    { label: 2, offset: [0, 3, 1] },
    { label: 'M', offset: [0, -3, 0] },
  ],
};

describe('a numbered cam', () => {
  it('has its labels for positions, as listed', () => {
    expect(adjusterPositions(cam)).toEqual([1, 2, 'M']);
  });

  it('puts its point at the offset of the label, and knows a stamped 2 written as text', () => {
    expect(indexedCam.effect(cam, 2, suspension)).toEqual({ shift: { upperRear: [0, 3, 1] } });
    expect(poseOf(suspension, [cam], { cam: '2' })).toEqual(poseOf(suspension, [cam], { cam: 2 }));
    expect(poseOf(suspension, [cam], { cam: 2 }).camber).not.toBeCloseTo(suspension.camber, 2);
  });

  it('names the numbers', () => {
    expect(instruction(indexedCam, cam, 1, 'M', 'RF')).toContain(
      'both ends of the cam from 1 to M, until M is at the notch',
    );
  });

  it('refuses a number that it has not, and a reference that is not one', () => {
    expect(() => solveCorner(suspension, [cam], { cam: 5 })).toThrow(
      'settings.cam: 5 is not allowed; allowed: one of 1, 2, M',
    );
    expect(() => solveCorner(suspension, [{ ...cam, reference: 9 }], {})).toThrow('adjusters[0].reference: 9');
    const twice = { ...cam, positions: [...cam.positions, { label: '2', offset: [0, 1, 0] }] };
    expect(() => solveCorner(suspension, [twice], {})).toThrow('labels that differ from one another');
  });

  it.each([
    ['out and up', [0, 3, 1], [0, -3, 0], [1, 2]],
    ['up alone', [0, 0, 2], [0, 0, -2], [2]],
    ['back alone', [-2, 0, 0], [-1, 0, 0], [0]],
    ['forward and out', [2, 1, 0], [-2, 0, 0], [0, 1]],
    ['every way', [1, 2, 3], [0, 0, 0], [0, 1, 2]],
    ['nowhere', [0, 0, 0], [0, 0, 0], []],
  ] as const)('one that moves its point %s is off that way, and along nothing else', (_, first, second, axes) => {
    const positions = [
      { label: 1, offset: [0, 0, 0] },
      { label: 2, offset: first },
      { label: 3, offset: second },
    ];
    const shifts = indexedCam.tolerance.error?.({ ...cam, positions }, 1, 2, 0.2).map(({ shift }) => shift);
    expect(shifts).toEqual(axes.map((axis) => ({ upperRear: [0, 1, 2].map((i) => (i === axis ? 0.2 : 0)) })));
  });
});
