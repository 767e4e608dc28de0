import { describe, expect, it } from 'vitest';
import { wedgeShim } from '../../../core/adjuster/wedge-shim.ts';
import { adjusterPositions, solveCorner } from '../../../core/index.ts';
import { instruction } from '../../tools/instruction.ts';
import { poseOf } from '../../tools/pose.ts';
import { randomSuspension, stream } from '../../tools/random-cars.ts';

const suspension = randomSuspension(stream(28), 'beam-rear');
const shim = { id: 'shim', kind: 'wedge-shim', degrees: [0.5, 1], marks: 4, reference: 'none' };

describe('a tapered hub shim', () => {
  it('is none, or one of its tapers at one of its angles', () => {
    expect(adjusterPositions(shim)).toEqual([
      'none',
      '0.5@0',
      '0.5@90',
      '0.5@180',
      '0.5@270',
      '1@0',
      '1@90',
      '1@180',
      '1@270',
    ]);
    expect(adjusterPositions({ ...shim, marks: 3, degrees: [0.75] })).toEqual([
      'none',
      '0.75@0',
      '0.75@120',
      '0.75@240',
    ]);
  });

  it('may be given by one taper, and fitted by default not at all', () => {
    const { reference: _, ...bare } = shim;
    expect(poseOf(suspension, [{ ...bare, degrees: 1 } as never], { shim: '1@180' }).camber).toBeCloseTo(
      suspension.camber - 1,
      9,
    );
  });

  it('is relative to the one that was fitted when the axle was measured', () => {
    const fitted = { ...shim, reference: '1@0' };
    expect(poseOf(suspension, [fitted], { shim: 'none' }).camber).toBeCloseTo(suspension.camber - 1, 9);
    expect(poseOf(suspension, [fitted], { shim: '0.5@90' }).toe).toBeCloseTo(suspension.toe + 0.5, 9);
  });

  it('says to take the hub off, and which way round', () => {
    const edge = (to: string, corner: 'LR' | 'RR') =>
      / with its thick edge at (.*) o’clock, seen from outside the wheel\.$/.exec(
        instruction(wedgeShim, shim, 'none', to, corner),
      )?.[1];
    // Toe-in: thick to the rear of the car, which is right of the hub on a left wheel and left of it on a right one.
    expect([edge('0.5@90', 'LR'), edge('0.5@90', 'RR')]).toEqual(['3', '9']);
    expect([edge('0.5@0', 'LR'), edge('0.5@0', 'RR')]).toEqual(['12', '12']);
    expect([edge('0.5@45', 'LR'), edge('0.5@45', 'RR')]).toEqual(['1½', '10½']);
    expect(instruction(wedgeShim, shim, '0.5@0', '0.5@90', 'LR')).toContain('turn the 0.5° shim so that it stands');
    expect(instruction(wedgeShim, shim, '1@0', '0.5@90', 'LR')).toContain('change the 1° shim for the 0.5° shim');
    expect(instruction(wedgeShim, shim, '1@0', 'none', 'LR')).toBe('Take the hub off and take the 1° shim out.');
  });

  it.each(['2@90', '0.5', '@90', '0.5@', 'None', 7])('refuses %s', (position) => {
    expect(() => solveCorner(suspension, [shim], { shim: position })).toThrow('with a taper of 0.5, 1, such as 0.5@0');
  });
});
