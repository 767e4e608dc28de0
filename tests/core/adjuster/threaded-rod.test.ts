import { describe, expect, it } from 'vitest';
import { threadedRod } from '../../../core/adjuster/threaded-rod.ts';
import { adjusterPositions, solveCorner } from '../../../core/index.ts';
import { turnsAndFlats } from '../../../core/words/en/figures.ts';
import { instruction } from '../../tools/instruction.ts';
import { apart, poseOf } from '../../tools/pose.ts';
import { randomSuspension, stream } from '../../tools/random-cars.ts';

const suspension = randomSuspension(stream(24), 'double-wishbone');
const rod = {
  id: 'rod',
  kind: 'threaded-rod',
  links: ['tieInner'],
  lead: 1.5,
  stepTurns: 0.5,
  range: [-2, 2] as const,
  reference: 0,
};

describe('a threaded rod', () => {
  it('has the multiples of its step within its range', () => {
    expect(adjusterPositions(rod)).toEqual([-2, -1.5, -1, -0.5, 0, 0.5, 1, 1.5, 2]);
  });

  it('is not turned out of its thread: engaged at the reference, less the turns that make it longer', () => {
    const thread = { ...rod, engaged: 12, leastEngaged: 11, reference: 0.25 };
    expect(adjusterPositions(thread)).toEqual([-2, -1.5, -1, -0.5, 0, 0.5, 1]);
    const none = { ...rod, engaged: 5, leastEngaged: 8 };
    expect(() => solveCorner(suspension, [none], {})).toThrow('a range that holds at least one step');
  });

  it.each([
    [0, 0.5],
    [0.25, 0.75],
    [-0.5, 1],
  ])('of half a turn either way, at %d turns: a step is as far as it goes', (reference, turns) => {
    const { from, to, said } = threadedRod.step({ ...rod, range: [-0.5, 0.5], stepTurns: 0.25, reference });
    expect([from, to]).toContain(reference);
    expect(from).toBeGreaterThanOrEqual(-0.5);
    expect(to).toBeLessThanOrEqual(0.5);
    expect((to as number) - (from as number)).toBeCloseTo(turns, 12);
    expect(said).toEqual({ step: 'longer', turns });
  });

  it('grows every link that it is in by turns·lead, whatever else moves', () => {
    const both = { ...rod, links: ['upperFront', 'upperRear'] };
    const { points } = poseOf(suspension, [both], { rod: -1.5 });
    for (const link of both.links) {
      const was = apart(suspension.points[link], suspension.points.upperBall);
      expect(apart(points[link], points.upperBall)).toBeCloseTo(was - 2.25, 8);
    }
  });

  it.each([
    [1, '1 turn'],
    [-2, '2 turns'],
    [1 / 3, '2 flats'],
    [-1 / 6, '1 flat'],
    [1.5, '1 turn 3 flats'],
    [2.25, '2 turns 1½ flats'],
    [0.125, '¾ flat'],
    [-0.875, '5¼ flats'],
    [0.3, 'about 1¾ flats'],
    [0.9999999, '1 turn'],
    [0, '0 turns'],
  ])('%d of a turn is %s', (turns, words) => {
    expect(turnsAndFlats(turns)).toBe(words);
  });

  it('says turns and flats, longer or shorter, and the sense as seen from the named end', () => {
    const seen = { ...rod, longerWhen: 'clockwise', seenFrom: 'the wheel end' };
    expect(instruction(threadedRod, seen, 0, 1.5, 'LF')).toBe(
      'Free both lock nuts, and the gaiter’s clip where there is one, turn the rod 1 turn 3 flats longer (2.25 mm), clockwise seen from the wheel end; hold the end joint square while locking.',
    );
    expect(instruction(threadedRod, seen, 1, 0.5, 'RF')).toContain(
      '3 flats shorter (0.75 mm), anticlockwise seen from',
    );
    expect(instruction(threadedRod, { ...rod, longerWhen: 'anticlockwise' }, 0, 1, 'LF')).toMatch(
      /mm\), anticlockwise;/,
    );
    expect(instruction(threadedRod, rod, 0, 1, 'LF')).not.toContain('clockwise');
  });

  it('refuses links that the suspension has not', () => {
    expect(() => solveCorner(suspension, [{ ...rod, links: ['tieInner', 'inner5'] }], {})).toThrow(
      'adjusters[0].links[1]: "inner5" is not allowed; allowed: one of upperFront',
    );
    expect(() => solveCorner(suspension, [{ ...rod, maxSideDifference: -3 }], {})).toThrow(
      'adjusters[0].maxSideDifference: -3 is not allowed; allowed: a number from 0 to 100 mm',
    );
  });
});
