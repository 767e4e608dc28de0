import { describe, expect, it } from 'vitest';
import { offsetSleeve } from '../../../core/adjuster/offset-sleeve.ts';
import { adjusterPositions, solveCorner } from '../../../core/index.ts';
import { instruction } from '../../tools/instruction.ts';
import { poseOf } from '../../tools/pose.ts';
import { randomSuspension, stream } from '../../tools/random-cars.ts';

const suspension = randomSuspension(stream(27), 'beam-front');
const sleeve = { id: 'sleeve', kind: 'offset-sleeve', degrees: 1.25, marks: 4, reference: 90 };

describe('an offset sleeve', () => {
  it('goes round in its marks', () => {
    expect(adjusterPositions(sleeve)).toEqual([0, 90, 180, 270]);
    expect(adjusterPositions({ ...sleeve, marks: 8 })).toHaveLength(8);
  });

  it('at its reference leaves the axle as it was measured', () => {
    expect(poseOf(suspension, [sleeve], { sleeve: 90 })).toEqual(poseOf(suspension));
  });

  it('a full turn on is where it was', () => {
    const [a, b] = [0, 360].map((position) => poseOf(suspension, [sleeve], { sleeve: position }));
    expect(b?.camber).toBeCloseTo(a?.camber ?? NaN, 10);
    expect(b?.caster).toBeCloseTo(a?.caster ?? NaN, 10);
  });

  it('names both angles', () => {
    expect(instruction(offsetSleeve, sleeve, 90, 180, 'LF')).toContain(
      'from 90° to 180° (0° = most camber, 90° = most caster)',
    );
  });

  it('needs ball joints that sit in an axle', () => {
    for (const kind of ['double-wishbone', 'strut', 'trailing-arm', 'beam-rear', 'unknown']) {
      const given = randomSuspension(stream(3), kind);
      expect(() => solveCorner(given, [sleeve], {}), kind).toThrow(
        'this one needs an axle with ball joints of its own',
      );
    }
  });
});
