import { describe, expect, it } from 'vitest';
import { axleWedge } from '../../../core/adjuster/axle-wedge.ts';
import { adjusterPositions, solveCorner } from '../../../core/index.ts';
import { instruction } from '../../tools/instruction.ts';
import { poseOf } from '../../tools/pose.ts';
import { randomSuspension, stream } from '../../tools/random-cars.ts';

const suspension = randomSuspension(stream(29), 'beam-front');
const wedge = { id: 'wedge', kind: 'axle-wedge', degrees: [2, -1, 1], reference: 1 };

describe('an axle wedge', () => {
  it('is one of its sizes, or none', () => {
    expect(adjusterPositions(wedge)).toEqual([-1, 0, 1, 2]);
    expect(() => solveCorner(suspension, [wedge], { wedge: 1.5 })).toThrow(
      'settings.wedge: 1.5 is not allowed; allowed: one of -1, 0, 1, 2°',
    );
  });

  it('gives its degrees of caster, from the one that was fitted, and nothing else', () => {
    const [was, now] = [poseOf(suspension, [wedge]), poseOf(suspension, [wedge], { wedge: -1 })];
    expect((now.caster ?? NaN) - (was.caster ?? NaN)).toBeCloseTo(-2, 10);
    expect([now.camber, now.toe, now.sai]).toEqual([was.camber, was.toe, was.sai]);
  });

  it('is for both sides alike', () => {
    expect(axleWedge.bothSides?.(wedge, 2)).toEqual({ value: 2, most: 0 });
    expect(instruction(axleWedge, wedge, 1, 2, 'LF')).toContain(
      'change the 1° wedge for the 2° wedge on both sides, thick end to the rear (to the front where the springs hang below the axle); one a side, never stacked',
    );
    expect(instruction(axleWedge, wedge, 1, 0, 'LF')).toBe(
      'Support the axle, free the spring bolts, take the 1° wedge out on both sides; final torque with the weight on the springs.',
    );
    expect(instruction(axleWedge, wedge, 0, 2, 'LF')).toContain(
      'fit the 2° wedge on both sides, thick end to the rear',
    );
  });

  it('needs a rigid axle that is steered', () => {
    for (const kind of ['double-wishbone', 'strut', 'five-link', 'beam-rear']) {
      expect(() => solveCorner(randomSuspension(stream(3), kind), [wedge], {}), kind).toThrow(
        'adjusters[0].kind: "axle-wedge"',
      );
    }
  });
});
