import { describe, expect, it } from 'vitest';
import { slide } from '../../../core/adjuster/slide.ts';
import { adjusterPositions, solveCorner } from '../../../core/index.ts';
import { wordsOf } from '../../../core/words/catalogue.ts';
import { instruction } from '../../tools/instruction.ts';
import { poseOf } from '../../tools/pose.ts';
import { randomSuspension, stream } from '../../tools/random-cars.ts';

const suspension = randomSuspension(stream(25), 'strut');
const plate = {
  id: 'plate',
  kind: 'slide',
  at: 'strutTop',
  direction: [0, -2, 0] as const,
  step: 1.5,
  range: [-4, 4] as const,
  reference: 1.5,
};

describe('a sliding plate', () => {
  it('has the multiples of its step within its range', () => {
    expect(adjusterPositions(plate)).toEqual([-3, -1.5, 0, 1.5, 3]);
  });

  it('moves its point by the millimetres from its reference: pushed in, the wheel’s top leans in', () => {
    const top = (position: number) => poseOf(suspension, [plate], { plate: position }).points.strutTop?.[1] ?? NaN;
    expect(top(1.5)).toBeCloseTo(suspension.points.strutTop?.[1] ?? NaN, 10);
    expect(top(3.25) - top(1.5)).toBeCloseTo(-1.75, 10);
    expect(poseOf(suspension, [plate], { plate: 3 }).camber).toBeLessThan(suspension.camber - 0.1);
  });

  it('says how far and which way, seen from the car', () => {
    expect(instruction(slide, plate, 0, 3, 'LF')).toBe(
      'Loosen the plate, slide it 3 mm inboard (0 → +3 mm on its scale); tighten it again.',
    );
    expect(instruction(slide, plate, 1.5, -1.5, 'LF')).toContain(
      'slide it 3 mm outboard (+1.5 → −1.5 mm on its scale)',
    );
    expect(wordsOf().step(slide.step(plate).said)).toBe('1.5 mm towards +, inboard');
    // A bush that is tightened where the car hangs is twisted where it stands.
    expect(instruction(slide, { ...plate, at: 'lowerFront' }, 0, 3, 'LF')).toBe(
      'Loosen the bolt in its slot, slide it 3 mm inboard (0 → +3 mm on its scale); final torque at ride height.',
    );
    for (const at of ['tieInner', 'upperBall']) {
      expect(instruction(slide, { ...plate, at }, 0, 3, 'LF'), at).toContain('tighten it again');
    }
  });

  it('refuses what its slots do not reach', () => {
    expect(() => solveCorner(suspension, [plate], { plate: 4.5 })).toThrow(
      'settings.plate: 4.5 is not allowed; allowed: mm from −4 to 4',
    );
    expect(() => solveCorner(suspension, [{ ...plate, reference: -6 }], {})).toThrow('adjusters[0].reference: -6');
    expect(() => solveCorner(suspension, [{ ...plate, range: [4, -4] }], {})).toThrow('adjusters[0].range');
  });
});
